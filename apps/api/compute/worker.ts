import { tasks, type TaskName } from './tasks.js';

/** A task as it comes to a thread. */
export interface ThreadTask {
  readonly name: TaskName;
  readonly input: unknown;
  /** After so many milliseconds a search ends with the best it has. */
  readonly withinMs: number;
}

/** What a thread of the pool runs: one task after the other, by name. */
export default function work({ name, input, withinMs }: ThreadTask): unknown {
  const end = performance.now() + withinMs;
  return (tasks[name] as (input: unknown, stop: () => boolean) => unknown)(
    input,
    () => performance.now() > end,
  );
}
