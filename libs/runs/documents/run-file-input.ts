import type { Learned, RunFile } from '#contract';
import { failed, isNonEmpty, ok, under, type Issue, type Result } from '#units';
import { learnedFrom } from '../learned/learned-from.js';
import { teachingsOf } from '../learned/teachings-of.js';
import { assessRuns } from '../assess-runs.js';
import { checkInput } from '../input/check-input.js';
import type { PastRun, RunsInput } from '../input/input.js';
import { effectiveLedger } from '../stock/effective-ledger.js';
import { stockOf, withStock } from '../stock/stock-of.js';
import type { UsedMaterial } from '../stock/used-materials.js';
import { materialsUsed } from './materials-used.js';
import { askBack } from '../log/ask-back.js';
import { unknownName } from '../input/name-issues.js';
import { resolveRuns } from '../input/resolve-run.js';

/** Runs that share a key could not be told apart in what they teach. */
function repeated({ runs, earlier }: RunFile): Issue[] {
  const keys = new Set(runs.map(({ key }) => key));
  return earlier.flatMap(({ run }, i) => {
    if (!keys.has(run.key)) {
      keys.add(run.key);
      return [];
    }
    const accepted = { kind: 'form', form: 'key-of-its-own' } as const;
    return [{ code: 'run.key-repeated', path: ['earlier', i, 'run', 'key'], value: run.key, accepted }];
  });
}

/** What a log in a file has to confirm first. Of runs that are over nothing is asked: their day has come. */
function askedOf(input: RunsInput, learned: Learned): Issue[] {
  return resolveRuns(input).flatMap((run) => {
    const lines = input.log.map((line, i) => ({ ...line, i })).filter((line) => line.run === run.order.key);
    return askBack(run, lines, { workshop: input.workshop, learned }).map((issue) => {
      const [place, ...rest] = issue.path;
      return { ...issue, path: ['log', lines[Number(place)]?.i ?? 0, 'entry', ...rest] };
    });
  });
}

/** The input that a run file is: its earlier runs were made by the designs and recipes that stand in it. */
export function runFileInput(file: RunFile): Result<RunsInput> {
  const { earlier, stock, ...input } = file;
  const { recipes, fats, moulds, workshop } = file;
  const past: PastRun[] = [];
  const issues: Issue[] = repeated(file);
  earlier.forEach(({ run, room, log }, i) => {
    const design = file.designs.find(({ key }) => key === run.design);
    if (design === undefined) {
      issues.push(unknownName(['earlier', i, 'run', 'design'], 'design', run.design, file.designs));
    } else past.push({ order: run, design, recipes, fats, moulds, room, log });
  });
  if (isNonEmpty(issues)) return failed(...issues);
  // What is wrong with the rest is told by whatever is asked of it; nothing can be learned by it.
  if (checkInput(input).length > 0) return ok(input);
  const told = past.map((run) => teachingsOf(run, workshop));
  const untrue = told.flatMap((run, i) => under(['earlier', i, 'log'], run.issues));
  if (untrue.length > 0) {
    const assessed = assessRuns(input);
    const all = [...(assessed.ok ? [] : assessed.issues), ...untrue];
    if (isNonEmpty(all)) return failed(...all);
  }
  const teachings = told.map((run) => run.teachings);
  const learned = learnedFrom(teachings);
  const asked = askedOf(input, learned);
  if (isNonEmpty(asked)) return failed(...asked);
  const taught = past.length === 0 ? input : { ...input, learned, teachings };
  if (stock.length === 0) return ok(taught);
  const stocked = stockedWorkshop(taught, past, stock);
  return stocked.ok ? ok({ ...taught, workshop: stocked.value }) : stocked;
}

/** The workshop with what the ledger of the file says is there; of materials that it does not name what the file tells. */
function stockedWorkshop(
  input: RunsInput,
  past: readonly PastRun[],
  ledger: RunFile['stock'],
): Result<RunsInput['workshop']> {
  const issues = under(['stock'], effectiveLedger(ledger).issues);
  if (isNonEmpty(issues)) return failed(...issues);
  const uses: UsedMaterial[] = [];
  for (const each of [input, ...past.map((run) => inputOfPast(run, input))]) {
    const used = materialsUsed(each);
    // What is wrong with the runs is told by whatever is asked of the file.
    if (used.ok) uses.push(...used.value);
  }
  const { materials } = stockOf({ workshop: input.workshop, ledger, uses });
  const named = new Set(ledger.flatMap(({ entry }) => ('material' in entry ? (entry.material ?? []) : [])));
  return ok(withStock(input.workshop, { materials: materials.filter(({ key }) => named.has(key)) }));
}

function inputOfPast({ order, design, log, ...own }: PastRun, { workshop, learned }: RunsInput): RunsInput {
  return {
    ...{ workshop, moulds: own.moulds, fats: own.fats, recipes: own.recipes },
    ...{ designs: [design], runs: [order], log: log.map((line) => ({ ...line, run: order.key })) },
    ...(learned !== undefined && { learned }),
  };
}
