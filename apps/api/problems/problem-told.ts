/** What is worked out elsewhere than where requests are answered. */
export type TaskName =
  | 'replan'
  | 'amounts'
  | 'clocks'
  | 'cure'
  | 'gather'
  | 'used'
  | 'lessons'
  | 'teach'
  | 'remedies'
  | 'what-if'
  | 'latest-start'
  | 'judge'
  | 'plan-preview'
  | 'amounts-preview'
  | 'clocks-preview';

/** Kinds of things that may not be there, be taken, or be in use. */
export type ThingName = 'workshop' | 'run' | 'plan' | 'key' | 'photo' | LibraryThing;
export type LibraryThing = 'mould' | 'fat' | 'recipe' | 'design';

/** What a problem says, by its own name, with what its title and detail need. */
export interface ProblemParams {
  'invalid-input': None;
  'nothing-there': { readonly method: string; readonly path: string };
  'no-such-thing': { readonly what: ThingName };
  'key-taken': { readonly what: ThingName; readonly key: string };
  'stale-version': None;
  'thing-in-use': { readonly what: LibraryThing; readonly users: readonly string[] };
  'equipment-in-use': { readonly equipment: string; readonly user: string };
  'run-begun': None;
  'run-abandoned': None;
  'idempotency-key-reused': None;
  'bad-idempotency-key': None;
  'other-site': None;
  'key-needed': None;
  'unknown-host': None;
  'wrong-key': None;
  'wrong-code': None;
  'too-many-tries': { readonly seconds: number };
  'own-key': None;
  'demo-gone': None;
  'not-json': None;
  malformed: None;
  'too-large': { readonly kilobytes: number | undefined };
  'workshop-busy': None;
  'changes-wait': { readonly count: number };
  'task-not-begun': { readonly task: TaskName };
  'task-took-too-long': { readonly task: TaskName; readonly seconds: number };
  'task-took-too-much-memory': { readonly task: TaskName; readonly megabytes: number };
  stopping: None;
  'client-left': None;
  'no-database': None;
  'disk-full': { readonly folder: string | undefined };
  internal: None;
}

type None = Readonly<Record<never, never>>;

export type ProblemTold = {
  readonly [S in keyof ProblemParams]: { readonly says: S } & ProblemParams[S];
}[keyof ProblemParams];

/** Title and detail of each problem, in one language. */
export type ProblemWords = {
  readonly [S in keyof ProblemParams]: (params: ProblemParams[S]) => {
    readonly title: string;
    readonly detail?: string;
  };
};
