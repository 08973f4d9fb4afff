import type { StageKind } from '#contract/names';

/** What a part is on the piece; each has a title until the maker gives it another. */
export const roles = ['base', 'layer', 'coat', 'filling', 'piping', 'decor', 'glaze', 'embed'] as const;
export type Role = (typeof roles)[number];

/** Titles of what a pattern makes up, in the maker's language. */
export interface PieceTitles {
  readonly roles: Readonly<Record<Role, string>>;
  /** Of a swirl; a number follows. */
  readonly colour: string;
  readonly joinHalves: string;
  /** `Pour the base`: what is done at a stage, with the title of its part. */
  readonly stage: (kind: StageKind, part: string) => string;
}
