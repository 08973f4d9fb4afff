import { shownOnOneLine } from '#units';
import { amountsCommand } from './amounts-command.js';
import { clocksCommand } from './clocks-command.js';
import { languageOf } from './options.js';
import { planCommand } from './plan-command.js';
import { printed } from './words/index.js';
import { writeOutcome } from './write-outcome.js';

const commands = { plan: planCommand, amounts: amountsCommand, clocks: clocksCommand };

/** Runs one command; the process ends by itself once its output is written. */
function main(args: readonly string[]): void {
  const [name = '', ...rest] = args;
  if (!Object.hasOwn(commands, name)) {
    const words = printed[languageOf(rest)].options;
    process.stderr.write(`${words.noCommand(shownOnOneLine(name), Object.keys(commands).join(', '))}\n`);
    process.exitCode = 64;
    return;
  }
  writeOutcome(commands[name as keyof typeof commands](rest), languageOf(rest));
}

main(process.argv.slice(2));
