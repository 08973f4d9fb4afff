import { stretches } from '#clocks';
import type { Link, OpeningState, Part, PieceDesign, Stage, Wait } from '#contract';
import { castTogether, conditionAt, hostOf, isSetInto, unmouldOf } from './part-condition.js';
import { countsFrom } from './counts-from.js';
import { statesOf, type KindOrder, type KindWait, type StateWait } from './stage-kind-facts.js';
import { stageKindFacts } from './stage-kinds.js';
import { mixedTogether, preparedTogether } from './mixed-together.js';
import { piecesAlike } from './pieces.js';
import { isDoneFor } from './stage-pieces.js';
import {
  isBefore,
  isBeforeMaking,
  leadsTo,
  makingStage,
  preparingStage,
  processOf,
  stagesBehind,
  startingStage,
  type Outline,
} from './stage-order.js';

/** What a design leaves unsaid and nobody does otherwise. */
export interface ImpliedOrder {
  readonly waits: readonly Wait[];
  readonly links: readonly Link[];
}

/**
 * A link that lets this many minutes pass after a part is made says when its soap is ready, by the maker's own experience;
 * a shorter one speaks of something else. Common practice, no source: no batter is firm within the hour.
 */
const LEAST_TO_FIRM_MIN = 60;

/** States in which soap bears being taken out of its mould, or cut. */
const FIRM_ENOUGH: ReadonlySet<OpeningState> = new Set([
  'firm',
  'handled',
  'cuttable',
  'coat-turnable',
  'piping-firm',
  'piping-turnable',
  'glaze-set',
  'glaze-turnable',
  'melt-firm',
  'usable',
  'cured',
  'best',
]);

/** Kinds whose waits every design has had from the first, so that they hold where it takes no others. */
const FIRMNESS: ReadonlySet<Stage['kind']> = new Set(['unmould', 'cut', 'turn', 'wrap']);

/**
 * The waits and links that follow from the kinds of a design's stages (`stageKindFacts`): soap is not unmoulded, cut,
 * glazed or turned before it bears that, nothing is put onto soap that takes it no more, and nothing is handled before
 * it is out of its mould. What a design says itself of the same stage and part takes their place, be it a state or hours
 * of its own; what it goes `without` is left out. Where pieces part ways, a stage waits for what is on any of those that it is
 * done for.
 * @param dropped parts that are left out: nothing waits for them, and a wait for one of them holds nothing back
 */
export function impliedOrder(design: Outline, dropped: ReadonlySet<string> = new Set()): ImpliedOrder {
  const added = { waits: [] as Wait[], links: [] as Link[] };
  // Rests go by the list alone, so they come last: what the craft asks is not to give way to them.
  const isRest = ({ kind }: Stage): boolean => stageKindFacts[kind].restMin !== undefined;
  const rests = design.stages.filter(isRest);
  for (const stage of [...design.stages.filter((each) => !isRest(each)), ...rests]) {
    for (const has of piecesAlike(design).filter((parts) => isDoneFor(design, stage, parts))) {
      const absent = design.parts.filter(({ key }) => dropped.has(key) || !has.has(key));
      const order = new Adding(design, new Set(absent.map(({ key }) => key)), has, added);
      if (design.adds !== 'firmness') order.waitForBatch(stage);
      order.putInOrder(stage);
      if (design.adds !== 'firmness') order.letSettle(stage);
      if (stage.kind === 'unmould' || stage.kind === 'cut') order.waitUntilFirm(stage);
      else if (design.adds !== 'firmness') order.waitForSoap(stage);
    }
  }
  return added;
}

/** A design with what it leaves unsaid. What it says keeps its place. */
export function withImplied<T extends PieceDesign>(design: T, { waits, links }: ImpliedOrder): T {
  if (waits.length === 0 && links.length === 0) return design;
  return { ...design, waits: [...design.waits, ...waits], links: [...design.links, ...links] };
}

/** What is added for pieces that are alike, to what was added for others. */
class Adding {
  private readonly waits: Wait[];
  private readonly links: Link[];

  constructor(
    private readonly design: Outline,
    /** Parts that are left out, or that these pieces go without. */
    private readonly dropped: ReadonlySet<string>,
    private readonly has: ReadonlySet<string>,
    added: { readonly waits: Wait[]; readonly links: Link[] },
  ) {
    this.waits = added.waits;
    this.links = added.links;
  }

  /** Puts a stage after those of the kinds that come first, unless the design has it the other way round. */
  putInOrder(stage: Stage): void {
    if (this.design.adds === 'firmness' && !FIRMNESS.has(stage.kind)) return;
    for (const { of, kinds, unlessCooked } of stageKindFacts[stage.kind].after ?? []) {
      if (unlessCooked === true && processOf(this.design, stage.part) !== 'cold') continue;
      const among = this.partsBefore(stage, of);
      for (const before of this.design.stages) {
        if (before === stage || !kinds.includes(before.kind) || !among.has(before.part)) continue;
        if (isDoneFor(this.design, before, this.has)) this.putAfter(stage, before);
      }
    }
  }

  /** What was set in needs its time before the piece is handled, where that comes later by the list or by links. */
  letSettle(stage: Stage): void {
    if (this.dropped.has(stage.part)) return;
    for (const { before, leastMin } of stageKindFacts[stage.kind].settles ?? []) {
      for (const later of this.design.stages) {
        if (!before.includes(later.kind) || !isDoneFor(this.design, later, this.has)) continue;
        if (!isBefore(this.soFar(), stage, later)) continue;
        const isTold = this.design.links.some(({ from, to }) => from === stage.key && to === later.key);
        const isAdded = this.links.some(
          (link) => link.from === stage.key && link.to === later.key && link.atLeastMin === leastMin,
        );
        if (!isTold && !isAdded) this.links.push({ from: stage.key, to: later.key, atLeastMin: leastMin });
      }
    }
  }

  private partsBefore(stage: Stage, of: KindOrder['of']): ReadonlySet<string> {
    if (of === 'piece') return new Set(this.design.parts.map(({ key }) => key));
    if (of === 'batch') return new Set(preparedTogether(this.design, stage.part).map(({ key }) => key));
    if (of === 'embed' && !isSetInto(this.design, stage)) return new Set();
    const part = of === 'host' ? hostOf(this.design, stage, this.dropped)?.key : stage.part;
    return new Set(part === undefined ? [] : castTogether(this.design, part).map(({ key }) => key));
  }

  /** Mixing once lye and fats are cool, pouring while the batter flows: where the design has the stages these count from. */
  waitForBatch(stage: Stage): void {
    const facts = stageKindFacts[stage.kind];
    const part = this.design.parts.find(({ key }) => key === stage.part);
    if (part === undefined || preparedTogether(this.design, stage.part).length === 0) return;
    const isBatter = part.kind === 'batch' && processOf(this.design, part.key) === 'cold';
    const filling = facts.fills === undefined || !isBatter ? undefined : stretches[facts.fills];
    const asked: readonly StateWait[] = [
      ...(facts.batch ?? []),
      ...(filling === undefined ? [] : [{ opens: filling.start, closes: filling.end } as StateWait]),
    ];
    for (const { opens, closes } of asked) {
      const state = opens ?? closes;
      const from = state === undefined ? undefined : startingStage(this.design, part.key, state);
      if (from === undefined || from === stage || this.comesBefore(stage.key, from.key)) continue;
      const told = this.waitsFor(stage, part).some((wait) => stagesBehind(this.design, wait).includes(from));
      if (told) continue;
      this.addWait(stage, part, opens === undefined ? {} : { opens }, closes === undefined ? {} : { closes });
      this.putAfter(stage, from);
    }
    if (stage.kind === 'mix') this.waitForHosts(stage);
    if (facts.makes) this.putAfterPreparing(stage);
    if (facts.restMin !== undefined) this.putBetween(stage);
  }

  /** Nobody mixes a batter before what it goes onto takes it: it thickens while one waits. */
  private waitForHosts(mix: Stage): void {
    const batch = mixedTogether(this.design, mix.part);
    for (const { key } of batch) {
      const making = makingStage(this.design, key);
      const host = making && hostOf(this.design, making, this.dropped);
      const begun = host && makingStage(this.design, host.key);
      if (making === undefined || host === undefined || begun === undefined) continue;
      // What is poured from this same batter is not there before it is mixed.
      if (batch.some((part) => part.key === host.key) || this.comesBefore(mix.key, begun.key)) continue;
      const own = this.waitsFor(making, host).find((wait) => wait.opens !== undefined);
      const condition = conditionAt(this.soFar(), making, host);
      const opens = own?.opens ?? statesOf(stageKindFacts[making.kind].waits, condition).opens;
      const isOpen = opens === undefined || this.opensAlready(mix, host, begun);
      this.addWait(mix, host, isOpen ? {} : { opens }, {});
      if (condition === 'out-of-mould') this.putAfterUnmould(mix, host);
    }
  }

  private preparedBy(stage: Stage, kind: Stage['kind']): boolean {
    return this.preparation(stage.part, kind) !== undefined;
  }

  /** A part is made when all that prepares its batch is done. */
  private putAfterPreparing(stage: Stage): void {
    const batch = new Set(preparedTogether(this.design, stage.part).map(({ key }) => key));
    for (const before of this.design.stages) {
      const prepares = batch.has(before.part) && isBeforeMaking(this.design, before);
      if (prepares && before !== stage) this.putAfter(stage, before);
    }
  }

  /** A rest follows what was done with its part before, and what is done with it later follows the rest, as in the list. */
  private putBetween(stage: Stage): void {
    const { stages } = this.design;
    const place = stages.indexOf(stage);
    const ofPart = stages.filter(({ part }) => part === stage.part);
    const before = ofPart.findLast((each) => stages.indexOf(each) < place);
    if (before !== undefined) this.putAfter(stage, before);
    for (const each of ofPart) if (stages.indexOf(each) > place) this.putAfter(each, stage);
  }

  /** Unmoulding and cutting: once all that is in the cavity is firm. */
  waitUntilFirm(stage: Stage): void {
    const cast = castTogether(this.design, stage.part);
    const first = cast[0] && unmouldOf(this.design, cast[0]);
    // What is unmoulded before it is cut is firm by then.
    const isOut = stage.kind === 'cut' && first !== undefined && this.comesBefore(first.key, stage.key);
    const inside = cast.flatMap((part) => {
      const making = makingStage(this.design, part.key);
      const counts = making !== undefined && making !== stage && !this.dropped.has(part.key);
      return counts && !this.comesBefore(stage.key, making.key) ? [{ part, making }] : [];
    });
    const isTold = inside.some(
      ({ part, making }) => this.isToldFirm(stage, part) || this.lagsBehind(stage, making),
    );
    const { waits } = stageKindFacts[stage.kind];
    for (const { part, making } of inside) {
      const condition = isOut ? 'out-of-mould' : conditionAt(this.soFar(), stage, part);
      const opens = isTold || isOut ? undefined : statesOf(waits, condition).opens;
      if (opens === undefined && !isOut) this.putAfter(stage, making);
      const closing = this.closingOf(stage, part, statesOf(waits, condition).closes);
      this.addWait(stage, part, opens === undefined ? {} : { opens }, closing);
    }
  }

  /** Anything else: as its kind says, of what it is put onto or of all that is on the piece. */
  waitForSoap(stage: Stage): void {
    const { waits, embed } = stageKindFacts[stage.kind];
    if (waits !== undefined) this.waitFor(stage, waits);
    if (embed !== undefined && isSetInto(this.design, stage)) {
      this.waitFor(stage, embed);
      this.haveReady(stage, embed);
    }
  }

  /** Nobody pours what something is set into before that lies ready: it skins over while one waits. */
  private haveReady(stage: Stage, { states }: KindWait): void {
    const host = hostOf(this.design, stage, this.dropped);
    const own = this.design.parts.find(({ key }) => key === stage.part);
    const making = own && makingStage(this.design, own.key);
    if (host === undefined || own === undefined || making === undefined || this.dropped.has(own.key)) return;
    const condition = conditionAt(this.soFar(), stage, host);
    const begun = this.preparation(host.key, 'mix') ?? makingStage(this.design, host.key);
    const isFresh = condition !== 'out-of-mould' && condition !== 'melt-out-of-mould';
    if (begun === undefined || !isFresh || this.comesBefore(begun.key, making.key)) return;
    this.putAfter(begun, unmouldOf(this.design, own) ?? making);
    const { opens } = states[conditionAt(this.design, stage, own) ?? 'decor'] ?? {};
    if (opens !== undefined && !this.lagsBehind(begun, making)) this.addWait(begun, own, { opens }, {});
  }

  private preparation(part: string, kind: Stage['kind']): Stage | undefined {
    return preparingStage(this.design, part, kind);
  }

  private waitFor(stage: Stage, waits: KindWait): void {
    for (const part of this.partsOf(waits, stage)) {
      if (waits.unlessCooked === true && processOf(this.design, part.key) !== 'cold') continue;
      const condition = conditionAt(this.soFar(), stage, part);
      const making = makingStage(this.design, part.key);
      if (condition === undefined || making === undefined || making === stage) continue;
      if (this.comesBefore(stage.key, making.key)) continue;
      if (stage.kind === 'layer' && this.isOfOneBatter(stage, part)) continue;
      const { opens, closes } = statesOf(waits, condition);
      const isOpen = opens === undefined || this.opensAlready(stage, part, making);
      this.addWait(stage, part, isOpen ? {} : { opens }, this.closingOf(stage, part, closes));
      if (condition === 'out-of-mould') this.putAfterUnmould(stage, part);
      // What is put onto a part comes after it is made, also where its soap need not be waited for.
      if (waits.of === 'host') this.putAfter(stage, making);
    }
  }

  /**
   * What is spooned onto soap of its own batch lies on what has thickened as much as itself, and waits for that by its own
   * batter: common practice, no source.
   */
  private isOfOneBatter(stage: Stage, host: Part): boolean {
    const batch = mixedTogether(this.design, stage.part);
    return batch.some(({ key }) => key === host.key) && this.preparedBy(stage, 'mix');
  }

  private partsOf({ of }: KindWait, stage: Stage): Part[] {
    if (of === 'own') return this.design.parts.filter(({ key }) => key === stage.part);
    if (of === 'host') {
      const host = hostOf(this.design, stage, this.dropped);
      return host === undefined ? [] : [host];
    }
    return this.design.parts.filter((part) => {
      const making = makingStage(this.design, part.key);
      return making !== undefined && !this.dropped.has(part.key) && isBefore(this.design, making, stage);
    });
  }

  private closingOf(stage: Stage, part: Part, closes: Wait['closes']): Pick<Wait, 'closes'> {
    const isNone = closes === undefined || this.design.adds === 'firmness' || this.closesAlready(stage, part);
    return isNone || (closes === 'embeds-until' && this.isMisted(stage, part)) ? {} : { closes };
  }

  /** One wait for both sides where one clock tells both, two where they count from different moments. */
  private addWait(
    stage: Stage,
    part: Part,
    { opens }: Pick<Wait, 'opens'>,
    { closes }: Pick<Wait, 'closes'>,
  ): void {
    const of = { stage: stage.key, part: part.key };
    const [opening, closing] = [opens, closes].map((state) =>
      state === undefined || this.goesWithout(stage, part, state) ? undefined : state,
    ) as [Wait['opens'], Wait['closes']];
    if (opening !== undefined && closing !== undefined && countsFrom(opening) === countsFrom(closing)) {
      this.addOnce({ ...of, opens: opening, closes: closing });
      return;
    }
    if (opening !== undefined) this.addOnce({ ...of, opens: opening });
    if (closing !== undefined) this.addOnce({ ...of, closes: closing });
  }

  /** Other pieces may have asked for the same. */
  private addOnce(wait: Wait): void {
    const isThere = this.waits.some(
      ({ stage, part, opens, closes }) =>
        stage === wait.stage && part === wait.part && opens === wait.opens && closes === wait.closes,
    );
    if (!isThere) this.waits.push(wait);
  }

  private putAfterUnmould(stage: Stage, part: Part): void {
    const unmould = unmouldOf(this.design, part);
    if (unmould !== undefined) this.putAfter(stage, unmould);
  }

  private putAfter(stage: Stage, before: Stage): void {
    if (this.comesBefore(before.key, stage.key) || this.comesBefore(stage.key, before.key)) return;
    this.links.push({ from: before.key, to: stage.key, atLeastMin: 0 });
  }

  /** Against all that was added before, so that nothing is ever to come after itself. */
  private comesBefore(from: string, to: string): boolean {
    return leadsTo(this.soFar(), from, to);
  }

  /** The design with what was added to it before. */
  private soFar(): Outline {
    const { design, waits, links } = this;
    return { ...design, waits: [...design.waits, ...waits], links: [...design.links, ...links] };
  }

  private isToldFirm(stage: Stage, part: Part): boolean {
    return this.waitsFor(stage, part).some(({ opens }) => opens !== undefined && FIRM_ENOUGH.has(opens));
  }

  private opensAlready(stage: Stage, part: Part, making: Stage): boolean {
    return (
      this.waitsFor(stage, part).some(({ opens }) => opens !== undefined) || this.lagsBehind(stage, making)
    );
  }

  private closesAlready(stage: Stage, part: Part): boolean {
    const starters = new Set([makingStage(this.design, part.key)?.key, unmouldOf(this.design, part)?.key]);
    return (
      this.waitsFor(stage, part).some(({ closes }) => closes !== undefined) ||
      this.design.links.some(
        ({ from, to, atMostMin }) => to === stage.key && starters.has(from) && atMostMin !== undefined,
      )
    );
  }

  /** What is too dry to bond by itself does so once it is wetted. */
  private isMisted(stage: Stage, part: Part): boolean {
    return this.design.stages.some(
      (each) => each.kind === 'mist' && each.part === part.key && isBefore(this.design, each, stage),
    );
  }

  private waitsFor(stage: Stage, part: Part): Wait[] {
    return this.design.waits.filter((wait) => wait.stage === stage.key && wait.part === part.key);
  }

  private lagsBehind(stage: Stage, making: Stage): boolean {
    return this.design.links.some(
      ({ from, to, atLeastMin }) =>
        from === making.key && to === stage.key && atLeastMin >= LEAST_TO_FIRM_MIN,
    );
  }

  private goesWithout(stage: Stage, part: Part, state: string): boolean {
    return (this.design.without ?? []).some(
      (each) => each.stage === stage.key && each.part === part.key && each.state === state,
    );
  }
}
