import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { parseWith, runFile, type RunFile } from '#contract';
import { learnedFrom, teachingsBasis, teachingsOf } from '#runs';
import type { Repositories, StoredWorkshop } from '#storage';
import { computeHere, type Compute } from '../compute/compute.js';
import { projectFolder } from '../program/project-folder.js';
import { readForRun, storeRun, takeSnapshot } from '../use-cases/create-run.js';
import { planRun } from '../use-cases/make-plan.js';
import type { LearnedBut } from '../use-cases/taught.js';

const WEEK_MS = 7 * 24 * 60 * 60_000;
/** Of the demos only these are planned; the rest waits in the library to be tried. */
const PLANNED = new Set(['rockpool-tiles', 'orchard-loaves']);
const FIRST = 'rockpool-tiles';

/** A demo file by its name. */
export interface Demo {
  readonly name: string;
  readonly file: RunFile;
}

export interface DemoOptions {
  /** Id of the maker's own workshop that it is the demo of; absent: it stands alone. */
  readonly demoOf?: string;
  /** Where its runs are planned; at once and here if not given. */
  readonly compute?: Compute;
  readonly demos?: readonly Demo[];
}

/**
 * Makes the demo workshop: everything of the demo files in the library, and two runs that compete for the same hours. Their
 * dates are moved by whole weeks, so that they lie ahead. Invented, and it says so.
 */
export async function loadDemoWorkshop(
  tx: Repositories,
  now: Date,
  { demoOf, compute = computeHere, demos = readDemos() }: DemoOptions = {},
): Promise<StoredWorkshop> {
  const facts = demos.map(({ file }) => file.workshop);
  const equipment = new Map(facts.flatMap((f) => f.equipment).map((item) => [item.key, item]));
  const workshop = await tx.workshops.create(
    { ...facts[0]!, equipment: [...equipment.values()] },
    demoOf === undefined ? {} : { demoOf },
  );
  for (const { file } of demos) {
    for (const mould of file.moulds) await tx.library.moulds.create(workshop.id, mould);
    for (const fat of file.fats) await tx.library.fats.create(workshop.id, fat);
    for (const recipe of file.recipes) await tx.library.recipes.create(workshop.id, recipe);
    for (const design of file.designs) await tx.library.designs.create(workshop.id, design);
  }
  for (const { file } of demos) await loadEarlier(tx, workshop, file);
  for (const { name, file } of demos) {
    if (!PLANNED.has(name)) continue;
    const shift = weeksAhead(file, now) * WEEK_MS;
    for (const order of file.runs) {
      const startAfter = moved(order.startAfter, shift).slice(0, 16);
      const readyBy =
        order.readyBy === undefined ? {} : { readyBy: moved(order.readyBy, shift).slice(0, 10) };
      const learned: LearnedBut = async (butRun) =>
        learnedFrom(await tx.teachings.list(workshop.id, { butRun }));
      const seen = await readForRun(tx, learned, workshop.id, { ...order, startAfter, ...readyBy }, now);
      const made = await planRun(compute, workshop.id, { input: seen.input, before: null, now });
      await storeRun(tx, workshop.id, seen, made);
    }
  }
  return workshop;
}

/** Runs that are over need no plan any more; what they logged teaches the first forecasts. */
async function loadEarlier(
  tx: Repositories,
  { id: workshopId, facts }: StoredWorkshop,
  file: RunFile,
): Promise<void> {
  for (const { run: order, log } of file.earlier) {
    const snapshot = await takeSnapshot(tx, workshopId, order);
    const created = await tx.runs.create(workshopId, { order, snapshot });
    if (!created.ok) throw new Error(`the demo has two runs called ${order.key}`);
    const { id, version } = created.value;
    const lines = [];
    for (const { entry } of log) lines.push(await tx.log.append(workshopId, id, entry));
    const { teachings } = teachingsOf({ order, ...snapshot, log: lines }, facts);
    const basis = teachingsBasis(facts, snapshot.room);
    const through = lines.at(-1)?.sequence;
    if (through !== undefined) await tx.teachings.put(workshopId, [{ runId: id, basis, through, teachings }]);
    await tx.runs.update(workshopId, id, version, { state: 'curing' });
  }
}

/** The demo files, the first workshop's first. */
export function readDemos(): Demo[] {
  const folder = join(projectFolder(), 'apps', 'cli', 'examples');
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => name.slice(0, -'.yaml'.length))
    .sort((a, b) => Number(b === FIRST) - Number(a === FIRST) || a.localeCompare(b));
  return names.map((name) => {
    const parsed = parseWith(runFile, parse(readFileSync(join(folder, `${name}.yaml`), 'utf8')));
    if (!parsed.ok) throw new Error(`the demo ${name} is broken: ${parsed.issues[0]?.code ?? ''}`);
    return { name, file: parsed.value };
  });
}

function weeksAhead(file: RunFile, now: Date): number {
  const first = Math.min(...file.runs.map((order) => Date.parse(`${order.startAfter}:00Z`)));
  return Math.max(0, Math.ceil((now.getTime() - first) / WEEK_MS));
}

/** Local times keep their wall clock when moved by whole weeks, so they are reckoned as if in UTC. */
function moved(local: string, byMs: number): string {
  const at = local.length === 10 ? `${local}T00:00:00Z` : `${local}:00Z`;
  return new Date(Date.parse(at) + byMs).toISOString();
}
