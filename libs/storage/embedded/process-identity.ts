import { execFileSync } from 'node:child_process';
import { readFileSync, readlinkSync } from 'node:fs';

/**
 * When the process with this id began, as text that is only good for comparing: an id alone is not enough,
 * because the system hands it out again.
 * @returns null when no such process lives (a zombie does not count)
 */
export function startOfProcess(pid: number): string | null {
  if (process.platform !== 'linux') return psField(pid, 'lstart');
  try {
    // proc(5): the name in field 2 may contain spaces and brackets, so fields are counted from the last bracket.
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    const [state, start] = [fields[0], fields[19]];
    if (state === 'Z' || state === 'X' || start === undefined) return null;
    // The start is counted from boot, and ids start over at boot as well.
    return `${readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()}:${start}`;
  } catch {
    return null;
  }
}

/** Whether the process is a database server working in this data folder. */
export function worksIn(pid: number, dataFolder: string): boolean {
  if (startOfProcess(pid) === null) return false;
  if (process.platform !== 'linux') return psField(pid, 'command')?.includes(dataFolder) ?? false;
  try {
    return readlinkSync(`/proc/${pid}/cwd`) === dataFolder;
  } catch {
    return false;
  }
}

function psField(pid: number, field: 'lstart' | 'command'): string | null {
  try {
    const text = execFileSync('ps', ['-o', `${field}=`, '-p', String(pid)], { encoding: 'utf8' }).trim();
    return text === '' ? null : text;
  } catch {
    return null;
  }
}
