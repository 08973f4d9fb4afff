import { describe, expect, it } from 'vitest';
import { batchPart, parseWith } from '#contract';

type Size = { readonly sharePercent?: number; readonly grams?: number };

const rest: Size = {};
const share = (sharePercent: number): Size => ({ sharePercent });
const grams = (g: number): Size => ({ grams: g });

function partOf(over: object): object {
  return { kind: 'batch', key: 'swirl', title: 'Swirl', recipe: 'plain', perPieceMl: 90, ...over };
}

function portionsOf(sizes: readonly Size[]): object[] {
  return sizes.map((size, i) => ({ key: `colour-${String(i)}`, title: `Colour ${String(i)}`, ...size }));
}

/** What is wrong, by field and rule. */
function wrongWith(over: object): (readonly [string, unknown])[] {
  const parsed = parseWith(batchPart, partOf(over));
  return parsed.ok
    ? []
    : parsed.issues.map((issue) => [issue.path.join('.'), 'rule' in issue ? issue.rule : issue.code]);
}

describe('the sizes of portions', () => {
  it.each([
    ['thirds as they are written', [share(33.3), share(33.3), share(33.3)]],
    ['thirds that come to a little more', [share(33.4), share(33.4), share(33.4)]],
    ['shares and a rest', [share(30), rest, share(20)]],
    ['grams and a rest', [grams(120), rest]],
    ['grams, shares and a rest', [grams(120), share(40), rest]],
    ['twelve', [...Array<Size>(11).fill(share(9)), rest]],
  ])('may be %s', (_, sizes) => {
    expect(wrongWith({ portions: portionsOf(sizes) })).toEqual([]);
  });

  it.each([
    ['portions-not-100', 1, [share(50), share(49.4)]],
    ['portions-not-100', 1, [share(50), share(50.6)]],
    ['portion-sized-once', 0, [{ sharePercent: 50, grams: 100 }, rest]],
    ['one-rest', 2, [rest, share(50), rest]],
    ['nothing-left-for-rest', 1, [rest, share(100)]],
    ['grams-need-rest', 1, [share(50), grams(100)]],
  ])('are refused by %s', (rule, at, sizes) => {
    expect(wrongWith({ portions: portionsOf(sizes) })).toEqual([
      [`portions.${String(at)}.sharePercent`, rule],
    ]);
  });

  it('are two at least and twelve at most', () => {
    expect(wrongWith({ portions: portionsOf([share(100)]) })).toEqual([['portions', 'input.too-small']]);
    const many = portionsOf([...Array<Size>(12).fill(share(8)), rest]);
    expect(wrongWith({ portions: many })).toEqual([['portions', 'input.too-big']]);
  });
});

it('lets portions hold the colours of their part', () => {
  const colourants = [{ key: 'blue', title: 'Blue', percent: 1 }];
  const portions = portionsOf([share(50), share(50)]);
  expect(wrongWith({ colourants, portions })).toEqual([['portions', 'portions-hold-colours']]);
  expect(wrongWith({ portions: portions.map((each) => ({ ...each, colourants })) })).toEqual([]);
});

it('cuts a cavity into pieces or puts a piece together from cavities', () => {
  const of = (piecesPerCavity: number, cavitiesPerPiece: number) =>
    wrongWith({ mould: 'ball', piecesPerCavity, cavitiesPerPiece });
  expect(of(2, 2)).toEqual([['cavitiesPerPiece', 'pieces-or-cavities']]);
  expect([of(2, 1), of(1, 2), of(1, 20)]).toEqual([[], [], []]);
  expect(of(1, 21)).toEqual([['cavitiesPerPiece', 'input.too-big']]);
});
