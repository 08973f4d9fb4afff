import { readdirSync } from 'node:fs';
import { LaunchError, orExplain } from './launch-error.mjs';
import { machineFactor } from './machine-speed.mjs';
import { inProject } from './paths.mjs';
import { ready } from './ready.mjs';
import { runStep } from './run-step.mjs';

const EX_USAGE = 64;

/**
 * `npm run bench` lists the benches, `npm run bench -- NAME [ARGUMENTS]` runs one: a row for each figure, then
 * all of them as JSON on the last line. Bars of time stand for one machine and stretch with what this one takes for the same work. Benches are compiled first, so that they measure what is shipped.
 */
await orExplain(async () => {
  const [name, ...args] = process.argv.slice(2);
  const names = readdirSync(inProject('tests', 'bench'))
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .map((file) => file.replace(/\.ts$/, ''));
  if (name === undefined) {
    console.log(
      `Benches, each run with “npm run bench -- NAME”:\n${names.map((each) => `  ${each}`).join('\n')}`,
    );
    return;
  }
  if (!names.includes(name)) {
    throw new LaunchError(`There is no bench “${name}”; there are: ${names.join(', ')}.`, EX_USAGE);
  }
  await ready({ need: 'build' });
  await compileBenches();
  const bench = await import(new URL(`../../dist/tests/bench/${name}.js`, import.meta.url).href);
  const before = machineFactor();
  /** @type {Figure[]} */
  const figures = await bench.figures(args);
  // A bench that was asked for something else than figures has printed it.
  if (figures.length === 0) return;
  // A faster machine is asked for no less than the bar.
  const factor = Math.max(1, (before + machineFactor()) / 2);
  console.log(`This machine takes ${factor.toFixed(2)} times as long as the one that bars of time are for.`);
  const judged = figures.map((figure) => stretched(figure, factor));
  for (const figure of judged) console.log(row(figure));
  console.log(JSON.stringify(judged));
});

/**
 * @typedef {{ name: string, value: number, unit: string, bar: number | null, better: 'lower' | 'higher' }} Figure
 */

async function compileBenches() {
  await runStep((line) => process.stderr.write(`${line}\n`), {
    title: 'Compiling the benches …',
    still: 'still compiling',
    command: process.execPath,
    args: [
      inProject('node_modules', 'typescript-native', 'bin', 'tsc'),
      // Not -b: it does not see changes of what benches import from outside their own folder.
      '-p',
      inProject('tests', 'tsconfig.bench.json'),
    ],
    failure: 'The benches do not compile; the compiler’s words are above.',
  });
}

/**
 * @param {Figure} figure
 * @param {number} factor
 * @returns {Figure} with its bar as it is for this machine
 */
function stretched(figure, factor) {
  const { unit, bar } = figure;
  if (bar === null) return figure;
  if (unit === 'ms' || unit === 's') return { ...figure, bar: Number((bar * factor).toPrecision(3)) };
  return unit.endsWith('/s') ? { ...figure, bar: Number((bar / factor).toPrecision(3)) } : figure;
}

/** @param {Figure} figure */
function row({ name, value, unit, bar, better }) {
  const measured = `${Number(value.toPrecision(4))} ${unit}`;
  if (bar === null) return `${name.padEnd(52)} ${measured.padStart(16)}  no bar`;
  const reached = better === 'lower' ? value <= bar : value >= bar;
  const wanted = `${better === 'lower' ? 'at most' : 'at least'} ${bar} ${unit}`;
  return `${name.padEnd(52)} ${measured.padStart(16)}  ${wanted.padEnd(20)} ${reached ? 'ok' : 'short'}`;
}
