import { tasks, type TaskName } from './tasks.js';

/** What a thread of the pool runs: one task after the other, by name. */
export default function work({ name, input }: { readonly name: TaskName; readonly input: unknown }): unknown {
  return (tasks[name] as (input: unknown) => unknown)(input);
}
