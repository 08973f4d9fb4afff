import { describe, expect, it } from 'vitest';
import { pieceDesign, type PieceDesign } from '#contract';
import { impliedOrder } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';

type Rough = Pick<PieceDesign, 'parts' | 'stages'> & Partial<Pick<PieceDesign, 'links' | 'waits'>>;

const batch = (key: string, mould: string | null = 'loaf'): PieceDesign['parts'][number] =>
  ({
    key,
    title: key,
    kind: 'batch',
    recipe: 'plain',
    perPieceMl: 80,
    ...(mould !== null && { mould }),
  }) as PieceDesign['parts'][number];
const stage = (key: string, kind: PieceDesign['stages'][number]['kind'], part: string) =>
  ({ key, title: key, kind, part }) as PieceDesign['stages'][number];

const implied = (rough: Rough, dropped: string[] = []) =>
  impliedOrder(pieceDesign.parse({ key: 'bar', title: 'Bar', adds: 'firmness', ...rough }), new Set(dropped));

const pour = stage('pour', 'pour', 'base');
const unmould = stage('unmould', 'unmould', 'base');
const cut = stage('cut', 'cut', 'base');
const layer = stage('layer', 'layer', 'top');
const [base, top] = [batch('base'), batch('top')];
const firm = (part: string) => ({ stage: 'unmould', part, opens: 'firm' });

describe('the order that every design leaves unsaid', () => {
  it('has unmoulding wait until its part is firm, and cutting come after it', () => {
    expect(implied({ parts: [base], stages: [pour, cut, unmould] })).toEqual({
      waits: [firm('base')],
      links: [{ from: 'unmould', to: 'cut', atLeastMin: 0 }],
    });
  });

  it('has soap turned and wrapped once it is out of its mould, and wrapped once it is cut', () => {
    const stages = [stage('wrap', 'wrap', 'base'), stage('turn', 'turn', 'top'), pour, layer, unmould, cut];
    const { links } = implied({ parts: [base, top], stages, waits: [firm('base') as never] });
    expect(links).toEqual([
      { from: 'unmould', to: 'wrap', atLeastMin: 0 },
      { from: 'cut', to: 'wrap', atLeastMin: 0 },
      { from: 'unmould', to: 'turn', atLeastMin: 0 },
      { from: 'layer', to: 'unmould', atLeastMin: 0 },
      { from: 'unmould', to: 'cut', atLeastMin: 0 },
    ]);
  });

  it('leaves turning and wrapping where a design puts them, and what no mould holds', () => {
    const [turn, wrap] = [stage('turn', 'turn', 'base'), stage('wrap', 'wrap', 'base')];
    const to = (key: string) => ({ from: key, to: 'unmould', atLeastMin: 0 });
    const rough = { parts: [base], stages: [pour, unmould, turn, wrap] };
    expect(implied({ ...rough, links: [to('turn'), to('wrap')] }).links).toEqual([]);
    const piped = [stage('pipe', 'pipe', 'loose'), stage('wrap-loose', 'wrap', 'loose')];
    const both = { parts: [base, batch('loose', null)], stages: [pour, unmould, ...piped] };
    expect(implied(both).links).toEqual([]);
  });

  it('waits for every part in the cavity', () => {
    expect(implied({ parts: [base, top], stages: [pour, layer, unmould] }).waits).toEqual([
      firm('base'),
      firm('top'),
    ]);
  });

  it('is nothing where the design says when, in whatever firm state, of a part in that cavity', () => {
    const waits = [{ stage: 'unmould', part: 'top', opens: 'cuttable' as const }];
    const links = [
      { from: 'pour', to: 'layer', atLeastMin: 0 },
      { from: 'unmould', to: 'cut', atLeastMin: 0 },
    ];
    const parts = [base, top];
    const stages = [pour, layer, unmould, cut];
    expect(implied({ parts, stages, waits, links })).toEqual({ waits: [], links: [] });
  });

  it('is nothing where the design gives hours of its own after the pour, but not for some minutes', () => {
    const after = (atLeastMin: number) =>
      implied({
        parts: [base],
        stages: [pour, unmould],
        links: [{ from: 'pour', to: 'unmould', atLeastMin }],
      }).waits;
    expect(after(24 * 60)).toEqual([]);
    expect(after(60)).toEqual([]);
    expect(after(59)).toEqual([firm('base')]);
    expect(after(0)).toEqual([firm('base')]);
  });

  it('counts neither a wait for another part, nor one that only closes, nor one for soap that only holds a layer', () => {
    const coat = batch('coat', null);
    const stages = [pour, stage('dip', 'dip', 'coat'), unmould];
    for (const wait of [
      { stage: 'unmould', part: 'coat', opens: 'coat-turnable' as const },
      { stage: 'unmould', part: 'base', closes: 'pliable-until' as const },
      { stage: 'unmould', part: 'base', opens: 'holds-layer' as const },
    ]) {
      expect(implied({ parts: [base, coat], stages, waits: [wait] }).waits).toEqual([firm('base')]);
    }
  });

  it('does not count a wait for a part that was left out, and waits for none', () => {
    const waits = [{ stage: 'unmould', part: 'top', opens: 'firm' as const }];
    const rough = { parts: [base, top], stages: [pour, layer, unmould], waits };
    expect(implied(rough).waits).toEqual([]);
    expect(implied(rough, ['top']).waits).toEqual([firm('base')]);
    expect(implied({ ...rough, waits: [] }, ['top']).waits).toEqual([firm('base')]);
  });

  it('has every part of the cavity made before it is unmoulded', () => {
    const waits = [{ stage: 'unmould', part: 'base', opens: 'firm' as const }];
    expect(implied({ parts: [base, top], stages: [pour, layer, unmould], waits })).toEqual({
      waits: [],
      links: [{ from: 'layer', to: 'unmould', atLeastMin: 0 }],
    });
  });

  it('waits until soap can be cut where nothing unmoulds it, or where it is cut in the mould', () => {
    const cuttable = [{ stage: 'cut', part: 'base', opens: 'cuttable' }];
    expect(implied({ parts: [batch('base', null)], stages: [pour, cut] }).waits).toEqual(cuttable);
    const links = [{ from: 'cut', to: 'unmould', atLeastMin: 0 }];
    const inMould = implied({ parts: [base], stages: [pour, cut, unmould], links });
    expect(inMould).toEqual({ waits: [...cuttable, firm('base')], links: [] });
  });

  it('asks of each part the state that it can have', () => {
    const drops = { key: 'drops', title: 'Drops', kind: 'melt-and-pour', perPieceMl: 1 };
    const stages = [stage('melt', 'glaze', 'drops'), stage('unmould', 'unmould', 'drops')];
    expect(implied({ parts: [drops as PieceDesign['parts'][number]], stages }).waits).toEqual([
      { stage: 'unmould', part: 'drops', opens: 'glaze-set' },
    ]);
    const shells = { key: 'shells', title: 'Shells', kind: 'decor', perPiece: 1 };
    const pressed = [stage('press', 'press-decor', 'shells'), stage('unmould', 'unmould', 'shells')];
    expect(implied({ parts: [shells as PieceDesign['parts'][number]], stages: pressed }).waits).toEqual([]);
    const piped = [pour, stage('pipe', 'pipe', 'top'), unmould];
    expect(implied({ parts: [base, top], stages: piped }).waits).toEqual([
      firm('base'),
      { stage: 'unmould', part: 'top', opens: 'piping-firm' },
    ]);
  });

  it('never has a stage come after itself: a mould that is filled again after unmoulding', () => {
    const again = stage('unmould-top', 'unmould', 'top');
    const links = [{ from: 'unmould', to: 'layer', atLeastMin: 0 }];
    const { waits } = implied({ parts: [base, top], stages: [pour, unmould, layer, again], links });
    expect(waits.filter((wait) => wait.stage === 'unmould')).toEqual([firm('base')]);
  });

  it('is nothing of firmness for the demos, which say all of it', () => {
    for (const name of ['rockpool-tiles', 'honeycomb-tartlets', 'orchard-loaves']) {
      for (const design of loadRunFile('demo', name).designs) {
        expect(impliedOrder({ ...design, adds: 'firmness' })).toEqual({ waits: [], links: [] });
      }
    }
  });
});
