import { existsSync, readdirSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/** A bare name means the demo of that name, unless a file of that name is there. */
export function fileOrDemo(file: string): string {
  if (/[./\\]/.test(file) || existsSync(file)) return file;
  const demo = `${demoFolder()}${file}.yaml`;
  return existsSync(demo) ? relative(process.cwd(), demo) : file;
}

/** Names of the demos that ship with the project. */
export function demoNames(): string[] {
  return readdirSync(demoFolder())
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => name.slice(0, -'.yaml'.length));
}

/** The demos stay beside their sources; built code looks for them from where it was built to. */
function demoFolder(): string {
  const here = new URL('./examples/', import.meta.url);
  const fromBuilt = new URL('../../../apps/cli/examples/', import.meta.url);
  return fileURLToPath(existsSync(here) ? here : fromBuilt);
}
