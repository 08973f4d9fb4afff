import { describe, expect, it } from 'vitest';
import { remediesDocument, type PlanDocument, type RemediesDocument, type Remedy } from '#contract';
import { instantOf } from '#hours';
import { planRuns, suggestRemedies, withChange, type RunsInput } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';

/** What must be there for the test to mean anything. */
function got<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('missing');
  return value;
}

const at = (local: string) => got(instantOf(local, 'Europe/Dublin'));
const FRIDAY = '2026-11-27T18:00';

/** A plan in trouble. */
interface Trial {
  readonly input: RunsInput;
  readonly now?: string;
}

const cups = () => loadRunFile('ok', 'two-layer');
const tiles = () => loadRunFile('ok', 'plain-tiles');
const [cup] = cups().runs;
const [cupDesign] = cups().designs;

const poured: Trial = {
  input: {
    ...tiles(),
    log: [{ run: 'harbour-market', entry: { kind: 'done', stage: 'pour-deep', at: '2026-11-27T18:40:00Z' } }],
  },
  now: '2026-11-27T18:45',
};
const loaves = () => loadRunFile('demo', 'orchard-loaves');
const together: RunsInput = {
  ...tiles(),
  moulds: [...tiles().moulds, ...loaves().moulds],
  recipes: [...tiles().recipes, ...loaves().recipes],
  designs: [...tiles().designs, ...loaves().designs],
  runs: [...tiles().runs, ...loaves().runs],
};
const planned: Record<string, Trial> = {
  'orchard loaves': { input: loaves() },
  'honeycomb tartlets': { input: loadRunFile('demo', 'honeycomb-tartlets') },
  'rockpool tiles': { input: tiles() },
  'rockpool tiles, one layer poured': poured,
  'tiles and loaves at the same bench': { input: together },
  'wet batter that has little time to cure': {
    input: {
      ...cups(),
      recipes: cups().recipes.map((recipe) => ({ ...recipe, lyeConcentrationPercent: 27 })),
      runs: [{ ...got(cup), readyBy: '2027-01-11' }],
    },
  },
};
const withoutPlan: Record<string, Trial> = {
  'one cup more than there are cavities': {
    input: { ...cups(), runs: [{ ...got(cup), count: 13 }] },
  },
  'a day that no cure meets': { input: { ...cups(), runs: [{ ...got(cup), readyBy: '2026-12-06' }] } },
  'a stage that fits into no sitting': {
    input: {
      ...cups(),
      designs: [
        {
          ...got(cupDesign),
          stages: got(cupDesign).stages.map((s) =>
            s.key === 'turn' ? { ...s, setupMin: 60, perPieceS: 3600 } : s,
          ),
        },
      ],
    },
  },
  'hours that are too short for two pours': {
    input: {
      ...cups(),
      workshop: {
        ...cups().workshop,
        hours: {
          ...cups().workshop.hours,
          weekly: {
            ...{ monday: [], tuesday: [], wednesday: [], thursday: [], saturday: [] },
            friday: [{ from: '18:00', to: '19:00' }],
            sunday: [{ from: '09:00', to: '10:00' }],
          },
        },
      },
    },
  },
};
const all = { ...planned, ...withoutPlan };
const options = ({ now = FRIDAY }: Trial) => ({ now: at(now), scenarios: 400, seed: 5 });

function plan(trial: Trial, input = trial.input): PlanDocument {
  const result = planRuns(input, options(trial));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

const told = new Map<Trial, RemediesDocument>();

/** Worked out once for each trial. */
function remediesOf(trial: Trial): RemediesDocument {
  const before = told.get(trial);
  if (before !== undefined) return before;
  const result = suggestRemedies(trial.input, options(trial));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  told.set(trial, result.value);
  return result.value;
}

describe.each(Object.entries(all))('remedies for %s', (_name, trial) => {
  it('are one to five, within the contract, the most odds for each point of disturbance first', () => {
    const document = remediesOf(trial);
    remediesDocument.parse(document);
    expect(document.remedies.length).toBeGreaterThan(0);
    expect(document.remedies.length).toBeLessThanOrEqual(5);
    const worth = document.remedies.map(({ effects, disturbance }) => effects.odds.gain / disturbance.points);
    expect(worth).toEqual([...worth].sort((a, b) => b - a));
    for (const { disturbance } of document.remedies) {
      expect(disturbance.of.reduce((sum, { points }) => sum + points, 0)).toBeCloseTo(disturbance.points, 9);
    }
  });

  it('are for the plan there is', () => {
    const [document, before] = [remediesOf(trial), plan(trial)];
    expect(document.planStatus).toBe(before.status);
    expect(document.odds).toEqual(before.odds);
  });

  it('have the odds they tell, exactly, when they are carried out and planned', () => {
    const [document, before] = [remediesOf(trial), plan(trial)];
    for (const { change, effects } of document.remedies) {
      const after = plan(trial, withChange(trial.input, change));
      expect(after.status).toBe('planned');
      expect(effects.odds.after).toBe(after.odds?.soundByTheDay);
      expect(effects.odds.gain).toBe(Number(after.odds?.soundByTheDay) - (before.odds?.soundByTheDay ?? 0));
      expect(effects.odds.gain).toBeGreaterThan(2 * effects.odds.standardError);
      expect(effects.sittings.after).toBe(after.sittings.length);
    }
  });

  it('make nothing worse unsaid, as the two plans beside each other show', () => {
    const [document, before] = [remediesOf(trial), plan(trial)];
    for (const remedy of document.remedies) {
      const after = plan(trial, withChange(trial.input, remedy.change));
      const unsaid = worsenings(before, after, remedy).filter(
        ({ said }) => !remedy.worse.some((loss) => said.test(JSON.stringify(loss))),
      );
      expect(
        unsaid.map(({ what }) => what),
        remedy.title.code,
      ).toEqual([]);
    }
  });
});

describe('remedies that are told to stop', () => {
  const trial = got(planned['rockpool tiles']);
  const stoppedAfter = (most: number): { readonly document: RemediesDocument; readonly asked: number } => {
    let asked = 0;
    const result = suggestRemedies(trial.input, { ...options(trial), stop: () => ++asked > most });
    if (!result.ok) throw new Error(JSON.stringify(result.issues));
    return { document: result.value, asked };
  };

  it('are those that were found by then, and say that time was up', () => {
    const whole = stoppedAfter(Infinity);
    expect(whole.document).toEqual(remediesOf(trial));
    const half = stoppedAfter(whole.asked / 2).document;
    remediesDocument.parse(half);
    expect(half.notes).toContainEqual({ code: 'remedies.time-up' });
    expect(half.tried).toBeLessThan(whole.document.tried);
    const late = stoppedAfter(0.9 * whole.asked).document;
    expect(late.notes).toContainEqual({ code: 'remedies.time-up' });
    expect(late.remedies.length).toBeGreaterThan(0);
    for (const { effects } of late.remedies) {
      expect(effects.odds.gain).toBeGreaterThan(2 * effects.odds.standardError);
    }
  });
});

/** What is worse in a plan than in another, and how it has to be said. Shares nothing with what is tested. */
function worsenings(before: PlanDocument, after: PlanDocument, { change }: Remedy) {
  const found: { readonly what: string; readonly said: RegExp }[] = [];
  const worse = (is: boolean, what: string, said: RegExp) => is && found.push({ what, said });
  const pieces = (p: PlanDocument) => p.runs.reduce((sum, { count }) => sum + count, 0);
  worse(pieces(after) < pieces(before), 'pieces', /remedy.fewer-pieces/);
  worse(change.kind === 'hours', 'hours', /remedy.outside-hours/);
  worse(change.kind === 'cavities', 'moulds', /remedy.price-of-moulds/);
  worse(change.kind === 'ready-by', 'the day', /remedy.nothing-ready/);
  worse(change.kind === 'drop-parts', 'a part', /remedy.pieces-without/);
  worse(change.kind === 'split', 'batches', /remedy.mixed-twice/);
  for (const now of after.runs) {
    const was = got(before.runs.find(({ design }) => design === now.design));
    for (const part of now.amounts) {
      const old = was.amounts.find((each) => each.part === part.part);
      const codes = new Set(old?.risks.map(({ code }) => code));
      const fresh = part.risks.filter(({ code }) => !codes.has(code));
      for (const { code } of fresh) worse(true, code, new RegExp(`new-risk.*"${part.title}".*"${code}"`));
      const shortage = part.cover.shortageChance - Number(old?.cover.shortageChance);
      worse(shortage > 0.002, 'running short', /remedy.runs-short/);
    }
    for (const { part, chance } of now.filling) {
      const old = was.filling.find((each) => each.part === part)?.chance ?? 1;
      worse(chance < old - 0.002, `the bowl of ${part}`, /remedy.stiffens-sooner/);
    }
    if (before.status !== 'planned') continue;
    const ready = (of: typeof now, end: 'likely' | 'high') => Date.parse(of.ready?.[end] ?? '');
    worse(ready(now, 'likely') > ready(was, 'likely'), `${now.run} likely ready`, /remedy.later-cure/);
    worse(ready(now, 'high') > ready(was, 'high'), `${now.run} ready at last`, /remedy.later-(slow-)?cure/);
    for (const stage of now.stages) {
      const share = (p: PlanDocument) =>
        p.weakLinks.filter((l) => l.stage === stage.key).reduce((sum, l) => sum + l.share, 0);
      const more = now.run === was.run && share(after) > share(before) + 0.002;
      worse(more, `lost at ${stage.key}`, new RegExp(`stage-riskier.*"${stage.title}"`));
    }
  }
  if (before.status === 'planned') {
    const bench = (p: PlanDocument) =>
      p.sittings.reduce((sum, s) => sum + Date.parse(s.endAt) - Date.parse(s.startAt), 0);
    worse(after.sittings.length > before.sittings.length, 'sittings', /remedy.more-sittings/);
    worse(bench(after) > bench(before), 'time at the bench', /remedy.more-bench-time/);
    const last = (p: PlanDocument) => Date.parse(p.sittings.at(-1)?.endAt ?? '');
    worse(last(after) > last(before), 'the end', /remedy.ends-later/);
    const lost = before.guarantee?.holds === true && after.guarantee?.holds === false;
    worse(lost, 'the guarantee', /remedy.holds-no-more/);
  }
  return found;
}

describe('remedies', () => {
  it('are the same at every call, and leave the input as it was', () => {
    const trial = got(withoutPlan['one cup more than there are cavities']);
    const copy = structuredClone(trial.input);
    const again = suggestRemedies(trial.input, options(trial));
    expect(again).toEqual({ ok: true, value: remediesOf(trial) });
    expect(trial.input).toEqual(copy);
  });

  /**
   * Own expectation, by hand: 12 cavities hold 12 cups; 13 want a second set. Two runs need no second set, but twice as many
   * pours, each with luck of its own, so the second set outdoes them.
   */
  it('for too few cavities are as many cups as there are, or a second set', () => {
    const { remedies } = remediesOf(got(withoutPlan['one cup more than there are cavities']));
    const changes = remedies.map(({ change }) => change);
    expect(changes[0]).toEqual({ kind: 'count', run: 'cups', count: 12 });
    expect(changes).toContainEqual({ kind: 'cavities', mould: 'cup', cavities: 24 });
  });

  it('ask for hours outside the maker’s own and the quiet ones, for a stage that fits into none', () => {
    const { remedies } = remediesOf(got(withoutPlan['hours that are too short for two pours']));
    const hours = remedies.flatMap(({ change }) => (change.kind === 'hours' ? [change] : []));
    expect(hours).toHaveLength(1);
    const [{ added }] = hours as [(typeof hours)[0]];
    expect(added.from >= '07:30' && added.to <= '22:30').toBe(true);
  });

  it('leave what is poured as it is', () => {
    const before = plan(poured);
    const deep = (p: PlanDocument) => ({
      amounts: p.runs[0]?.amounts.find(({ part }) => part === 'deep'),
      stage: p.runs[0]?.stages.find(({ key }) => key === 'pour-deep'),
    });
    for (const { change } of remediesOf(poured).remedies) {
      expect(change).not.toMatchObject({ kind: 'recipe', recipe: 'tile-base' });
      expect(['count', 'split', 'start']).not.toContain(change.kind);
      expect(deep(plan(poured, withChange(poured.input, change)))).toEqual(deep(before));
    }
  });

  it('stay within the usual shares of water and hardener, and say what lye does', () => {
    const recipes = Object.values(all)
      .flatMap((trial) => remediesOf(trial).remedies)
      .filter(({ change }) => change.kind === 'recipe');
    expect(recipes.length).toBeGreaterThan(0);
    for (const { change, cautions } of recipes) {
      if (change.kind !== 'recipe') continue;
      const { lyeConcentrationPercent: lye = 33, sodiumLactatePercent: lactate = 2 } = change;
      expect(lye >= 25 && lye <= 40 && lactate >= 0 && lactate <= 3).toBe(true);
      expect(cautions.map(({ code }) => code)).toEqual(['caution.lye']);
    }
  });

  it('are none where nothing is left to do, and it says so', () => {
    const trial: Trial = {
      input: {
        ...cups(),
        log: (
          [
            ['pour-under', '2026-11-27T18:32:00Z'],
            ['pour-over', '2026-11-27T19:52:00Z'],
            ['unmould', '2026-11-29T18:00:00Z'],
            ['turn', '2026-11-30T18:30:00Z'],
          ] as const
        ).map(([stage, done]) => ({ run: 'cups', entry: { kind: 'done', stage, at: done } })),
      },
      now: '2026-11-30T19:00',
    };
    const { remedies, tried, notes } = remediesOf(trial);
    expect({ remedies, tried }).toEqual({ remedies: [], tried: 0 });
    expect(notes).toEqual([{ code: 'remedies.nothing-lost' }]);
  });

  it('refuse input that makes no sense, as a plan does', () => {
    const input = { ...cups(), runs: [{ ...got(cup), design: 'teapot' }] };
    expect(suggestRemedies(input, { now: at(FRIDAY) })).toEqual(planRuns(input, { now: at(FRIDAY) }));
  });

  it('of a plan that is held to one before are worth more than planning afresh, or that is one of them', () => {
    const trial = got(planned['orchard loaves']);
    const late: PlanDocument = plan(trial, {
      ...trial.input,
      runs: trial.input.runs.map((run) => ({ ...run, startAfter: '2026-11-28T20:00' })),
    });
    const result = suggestRemedies(trial.input, { ...options(trial), previous: late });
    if (!result.ok) throw new Error(JSON.stringify(result.issues));
    const fresh = Number(plan(trial).odds?.soundByTheDay);
    for (const { change, effects } of result.value.remedies) {
      if (change.kind === 'plan-anew') expect(effects.odds.after).toBe(fresh);
      expect(effects.odds.before).toBe(result.value.odds?.soundByTheDay);
    }
  });
});
