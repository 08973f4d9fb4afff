import { timeScale } from './frame.js';
import { FLAG_HALF, hang, type Flag, type PlacedFlag } from './flags.js';
import type { Stretch } from '../look/local-days.js';
import type { TideRun } from './tide-run.js';

/** The flag of a stage as it is drawn. */
export interface TideFlag extends PlacedFlag {
  /** Pixels from its number to its end. */
  readonly width: number;
  /** What is written on it: the title, or its beginning; empty where names have no room. */
  readonly name: string;
}

export interface TideFlags {
  /** By the id of a mark. */
  readonly of: ReadonlyMap<string, TideFlag>;
  /** For each ribbon, how many hang above each other: the same wherever on it one looks, at one scale. */
  readonly levels: readonly number[];
}

/** Pixels of a letter of a flag, on average; a little generous, as it is not measured. */
const LETTER = 6.4;
const PADDING = 10;
/** A making that is drawn narrower than this gets numbers alone. */
const LEAST_FOR_NAMES = 200;
const [NARROWEST_NAME, WIDEST_NAME] = [110, 250];
/** Flags so far outside the picture are not looked at. */
const MARGIN = 20;

/** The flags of all stages. @param width of the picture, in pixels */
export function tideFlags({ marks, parts, making }: TideRun, view: Stretch, width: number): TideFlags {
  const { x } = timeScale(view, width);
  const hasNames = x(making.to) - x(making.from) >= LEAST_FOR_NAMES;
  const most = Math.min(WIDEST_NAME, Math.max(NARROWEST_NAME, width * 0.75));
  const of = new Map<string, TideFlag>();
  const levels = parts.map((_, row) => {
    const own = marks.filter((mark) => mark.row === row).toSorted((a, b) => a.at - b.at);
    const flags = own.map(({ at, stage }): Flag & { readonly name: string } => {
      const name = hasNames ? shortened(stage.title, most) : '';
      return { x: x(at), name, width: 2 * FLAG_HALF + (name === '' ? 0 : name.length * LETTER + PADDING) };
    });
    const isSeen = ({ x: place }: Flag): boolean => place > -MARGIN && place < width + MARGIN;
    const seen = own.filter((_mark, i) => isSeen(flags[i]!));
    const shown = flags.filter(isSeen);
    const hung = hang(shown, width);
    seen.forEach(({ id }, i) => of.set(id, { ...hung[i]!, width: shown[i]!.width, name: shown[i]!.name }));
    const all = [...hung, ...hang(flags, Infinity)];
    return 1 + Math.max(0, ...all.map(({ level }) => level));
  });
  return { of, levels };
}

function shortened(title: string, most: number): string {
  const letters = Math.floor((most - PADDING) / LETTER);
  return title.length <= letters ? title : `${title.slice(0, letters - 1).trimEnd()}…`;
}
