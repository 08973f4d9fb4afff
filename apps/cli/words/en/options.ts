/** What is wrong with the options of a command. */
export const options = {
  noCommand: (name: string, commands: string) => `There is no command “${name}”; there is: ${commands}.`,
  unknown: (option: string) => `There is no option ${option}.`,
  meant: (option: string, near: string) => `There is no option ${option}; did you mean ${near}?`,
  needsValue: (option: string, example: string) => `${option} needs a value, such as ${example}.`,
  takesNone: (option: string) => `${option} takes no value.`,
  belongsTo: (option: string, command: string) => `${option} belongs to npm run ${command}.`,
  notKnown: (option: string, value: string, accepted: string) =>
    `${option} ${value} is not known; accepted: ${accepted}.`,
  whichFile: 'Which run file?',
  oneFile: (more: string) => `One file at a time; “${more}” is too many.`,
  count: (value: string) => `--count ${value} is no count; accepted: a whole number, 1 to 5000.`,
  oneRun: (runs: string) =>
    `--count is for files with one run; this one has ${runs}. Change count in the file.`,
  seed: (value: string, low: string, high: string) =>
    `--seed ${value} is no seed; accepted: a whole number, ${low} to ${high}.`,
  at: (value: string) =>
    `--at ${value} is no local time; accepted: a date and time such as 2026-11-27T18:00, in the years 2000 to 2199.`,
  noSuchTime: (value: string) =>
    `--at ${value} is no day or time that exists; accepted: one such as 2026-11-27T18:00.`,
  goesWithOdds: (option: string) => `${option} goes with --odds, such as --odds 0.9.`,
  odds: (value: string) =>
    `--odds ${value} are none to ask for; accepted: a number from 0.01 to 0.999 such as 0.9.`,
  remediesWithOdds: '--remedies are those of a plan from the first start; leave --odds out.',
  readyBy: (value: string) =>
    `--ready-by ${value} is no day; accepted: a date such as 2027-01-16, in the years 2000 to 2199.`,
};
