import { pieceDesign, type PieceDesign } from '#contract';

const soap = (key: string, mould?: string) => ({
  ...{ key, title: key, kind: 'batch', recipe: 'plain', perPieceMl: 80 },
  ...(mould !== undefined && { mould }),
});
const melted = (key: string, mould?: string) => ({
  ...{ key, title: key, kind: 'melt-and-pour', perPieceMl: 2 },
  ...(mould !== undefined && { mould }),
});
const decor = (key: string) => ({ key, title: key, kind: 'decor', perPiece: 1 });
const parts = {
  base: soap('base', 'cavity'),
  top: soap('top', 'cavity'),
  loose: soap('loose'),
  coat: soap('coat'),
  foam: soap('foam'),
  drops: melted('drops'),
  shells: decor('shells'),
  star: melted('star', 'star'),
  rim: melted('rim', 'star'),
  moon: soap('moon', 'moon'),
};

/** What follows from a design: which stage comes after which, and what it waits for. */
interface Order {
  readonly links: readonly PieceDesign['links'][number][];
  readonly waits: readonly PieceDesign['waits'][number][];
}

/** A piece whose stages are told as “kind part”, in the order in which they are done. */
export function piece(stages: readonly string[], more: Partial<PieceDesign> = {}): PieceDesign {
  const told = stages.map((each) => {
    const [kind = '', part = ''] = each.split(' ');
    return { key: `${kind}-${part}`, title: each, kind, part };
  });
  const used = Object.values(parts).filter(({ key }) => told.some(({ part }) => part === key));
  return pieceDesign.parse({ key: 'piece', title: 'Piece', parts: used, stages: told, ...more });
}

/**
 * What a stage waits for and comes after, as text.
 * @param order what is derived from a design; told, as helpers of all tests know no library that they test
 */
export function askedBy(order: (design: PieceDesign) => Order) {
  return (stage: string, stages: readonly string[], more?: Partial<PieceDesign>): string[] => {
    const key = stage.replace(' ', '-');
    const { waits, links } = order(piece(stages, more));
    return [
      ...links.flatMap(({ from, to }) => (to === key ? [`after ${from}`] : [])),
      ...waits.flatMap(({ stage: waiting, part, opens, closes }) =>
        waiting !== key
          ? []
          : [
              ...(opens === undefined ? [] : [`${part} ${opens}`]),
              ...(closes === undefined ? [] : [`${part} before ${closes}`]),
            ],
      ),
    ];
  };
}
