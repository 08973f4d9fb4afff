import type { None } from './none.js';

/** Why an entry of a bench log cannot be true. Titles are those of stages and parts, times are minutes. */
export interface LogIssues {
  /** Asked back: a time far off its forecast. `title` is the part's. */
  'log.time-doubtful': {
    readonly title: string;
    readonly state: string;
    readonly saw: 'not-yet' | 'already' | 'just-now';
    readonly afterMin: number;
    readonly leastMin: number;
    readonly mostMin: number;
  };
  'log.state-without-clock': { readonly title: string; readonly state: string };
  /** @param stage title of the stage that starts the clock; absent: adding the lye does */
  'log.clock-not-started': { readonly state: string; readonly stage?: string };
  'log.before-clock': { readonly at: string };
  'log.ends-before-start': { readonly startedAt: string; readonly at: string };
  'log.out-of-order': { readonly title: string; readonly missing: readonly string[] };
  'log.nothing-to-wait-for': { readonly title: string };
  'log.already-done': { readonly title: string };
  /** @param stage title of the stage to be done before; absent: no part cures */
  'log.cure-not-begun': { readonly at: string; readonly stage?: string };
  'log.weigh-in-doubtful': {
    readonly massG: number;
    readonly pieces: number;
    readonly expectedEachG: number;
  };
  'log.weighing-implausible': {
    readonly title: string;
    readonly usedG: number;
    readonly pieces: number;
    readonly expectedG: number;
  };
  'log.not-made': { readonly title: string; readonly stage: string };
  'log.more-than-made': { readonly made: number; readonly pieces: number };
  /** Pieces of one group cannot go without a part that others keep. */
  'log.dropped-of-one-group': { readonly title: string; readonly group: string };
  'log.needed-later': { readonly because: { readonly code: string } };
  'log.unknown-entry': { readonly known: readonly string[] };
  'log.in-the-future': { readonly at: string };
  'log.long-ago': { readonly at: string };
}

/** Why a photo is not kept, or not shown. */
export interface PhotoIssues {
  'photo.no-jpeg': None;
  /** @param side the longer one, in pixels */
  'photo.too-large': { readonly side: number };
  /** @param of whose photos take all the room there is */
  'photo.no-room': { readonly of: 'run' | 'workshop'; readonly mostMb: number };
  /** The same id was sent with another picture. */
  'photo.id-taken': None;
  /** The run has no such photo. */
  'photo.unknown': None;
}

/** Why a line of the stock ledger cannot be true. */
export interface StockIssues {
  'stock.unknown-entry': None;
  /** @param title of the leftover */
  'stock.leftover-short': { readonly title: string; readonly leftG: number };
  'stock.needed-later': None;
  /** The material is kept in the other unit. */
  'stock.other-unit': { readonly title: string; readonly unit: 'g' | 'piece' };
  /** The same id was sent with another content. */
  'stock.id-taken': None;
}
