import type { Schemas } from '../api/client.js';
import type { Plan } from './use-run.js';

/** What all views of a run are about. */
export interface RunProps {
  readonly run: Schemas['StoredRun'];
  readonly plan: Plan;
}

/** Something that went wrong with a batch, as the log has it. */
export type Mishap = Extract<Schemas['LogEntry'], { kind: 'mishap' }>;
