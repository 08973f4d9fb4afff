import { amountsCommand } from './amounts-command.js';
import { clocksCommand } from './clocks-command.js';
import { planCommand } from './plan-command.js';
import { writeOutcome } from './write-outcome.js';

const commands = { plan: planCommand, amounts: amountsCommand, clocks: clocksCommand };

/** Runs one command; the process ends by itself once its output is written. */
function main(args: readonly string[]): void {
  const [name = '', ...rest] = args;
  if (!Object.hasOwn(commands, name)) {
    process.stderr.write(`There is no command “${name}”; there is: ${Object.keys(commands).join(', ')}.\n`);
    process.exitCode = 64;
    return;
  }
  writeOutcome(commands[name as keyof typeof commands](rest));
}

main(process.argv.slice(2));
