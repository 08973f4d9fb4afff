import { readdirSync, readFileSync } from 'node:fs';

/** Of Linux, whatever the machine: `getconf CLK_TCK`. */
const TICKS_PER_SECOND = 100;

/**
 * Processor time in milliseconds that a process and its children have used so far, to 10 ms. Children that have ended
 * count where the process has waited for them. Linux only.
 */
export function cpuMs(pid: number): number {
  const processes = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  const all = processes.flatMap((name) => readStat(name) ?? []);
  const own = all.filter((each) => each.pid === pid || each.parent === pid);
  return (own.reduce((sum, { ticks }) => sum + ticks, 0) * 1000) / TICKS_PER_SECOND;
}

function readStat(
  name: string,
): { readonly pid: number; readonly parent: number; readonly ticks: number } | undefined {
  let text: string;
  try {
    text = readFileSync(`/proc/${name}/stat`, 'utf8');
  } catch {
    return undefined; // It has ended since the folder was read.
  }
  // The name of the command, in brackets, may hold spaces; what follows does not.
  const fields = text.slice(text.lastIndexOf(')') + 2).split(' ');
  const [user, system, endedUser, endedSystem] = fields.slice(11, 15).map(Number);
  const ticks = (user ?? 0) + (system ?? 0) + (endedUser ?? 0) + (endedSystem ?? 0);
  return { pid: Number(name), parent: Number(fields[1]), ticks };
}
