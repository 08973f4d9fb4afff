import type { None } from './none.js';

/** There is none of that key. @param known keys of those that there are */
interface Unknown {
  readonly known: readonly string[];
}

export interface DesignIssues {
  'design.unknown': Unknown;
  'recipe.unknown': Unknown;
  'mould.unknown': Unknown;
  'part.unknown': Unknown;
  'stage.unknown': Unknown;
  'equipment.unknown': Unknown;
  'run.unknown': Unknown;
  'group.unknown': Unknown;
  'design.making-stage': { readonly title: string; readonly count: number };
  'design.wait-without-making': { readonly title: string };
  'design.no-hands-on': None;
  'design.firmness-refused': { readonly title: string };
  'design.state-without-clock': {
    readonly title: string;
    readonly state: string;
    /** States that the part has; empty for one without a clock. */
    readonly states: readonly string[];
  };
  'design.cavity-overfull': { readonly mould: string; readonly filledMl: number; readonly holdsMl: number };
  /** Titles of two parts of one batch, each with a recipe of its own. */
  'design.batch-recipes': { readonly titles: readonly string[] };
  /** Titles of two parts of one batch that no stage mixes. */
  'design.batch-needs-mix': { readonly titles: readonly string[] };
  /** What is cooked or melted again, by the title of its part, and never tested. */
  'design.cook-needs-test': { readonly title: string };
  /** Titles of two parts in one cavity of which a piece takes different numbers. */
  'design.cavities-differ': { readonly titles: readonly string[] };
  'design.mould-never-freed': { readonly title: string };
  /** Titles of the stages on the way round. */
  'design.circular-links': { readonly way: readonly string[] };
}

export interface RunIssues {
  'workshop.unknown-time-zone': None;
  'hours.never-open': None;
  'library.key-changed': { readonly key: string };
  'run.ready-before-start': { readonly readyBy: string; readonly startAfter: string };
  'run.groups-sum': { readonly sum: number; readonly count: number };
  'run.group-part-twice': { readonly group: string; readonly part: string };
  /** @param part title of what is put onto or into another part, none of which the group has */
  'run.group-without-host': { readonly group: string; readonly part: string };
  'run.key-repeated': None;
  'run.start-too-far': { readonly startAfter: string };
  'run.begun': { readonly title: string };
  'run.which': { readonly known: readonly string[] };
  'run.no-day': None;
  'run.day-out-of-range': { readonly day: string };
  /** As 30 February. */
  'run.no-such-day': None;
}

export interface PlanIssues {
  'plan.too-large': { readonly stages: number; readonly most: number };
  'plan.pins-impossible': None;
  'plan.undecided': None;
  /** @param recipe its title; no clock tells when such a soap sets */
  'plan.potash': { readonly recipe: string; readonly percent: number };
  'change.no-such-run': Unknown;
  'change.no-such-recipe': Unknown;
  'change.no-such-mould': Unknown;
}
