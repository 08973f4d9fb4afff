import { instantOf } from '#hours';
import { runFileInput, suggestRemedies, type RunsInput } from '#runs';
import { type Figure, median } from '../support/figure.js';
import { loadRunFile } from '../support/run-files.js';

const demos = ['rockpool-tiles', 'orchard-loaves', 'honeycomb-tartlets'];
const ROUNDS = 7;

/** How long the remedies of a demo take in one process, warmed up, and how many changes were planned for them. */
export async function figures(): Promise<Figure[]> {
  return demos.flatMap((demo) => {
    const input = inputOf(demo);
    const [run] = input.runs;
    const now = instantOf(run?.startAfter ?? '', input.workshop.timeZone);
    if (now === undefined) throw new Error(`${demo} has no start`);
    suggestRemedies(input, { now });
    const times: number[] = [];
    let tried = 0;
    for (let round = 0; round < ROUNDS; round++) {
      const begun = performance.now();
      const found = suggestRemedies(input, { now });
      times.push(performance.now() - begun);
      if (found.ok) tried = found.value.tried;
    }
    return [
      { name: `remedies of ${demo}, median`, value: median(times), unit: 'ms', bar: 1000, better: 'lower' },
      { name: `remedies of ${demo}, changes planned`, value: tried, unit: '', bar: null, better: 'lower' },
    ] satisfies Figure[];
  });
}

function inputOf(demo: string): RunsInput {
  const input = runFileInput(loadRunFile('demo', demo));
  if (!input.ok) throw new Error(JSON.stringify(input.issues));
  return input.value;
}
