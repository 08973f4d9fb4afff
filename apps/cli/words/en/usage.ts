/** How commands are called. Each text stands after the call that it explains. */
export const usage = {
  usage: 'Usage',
  file: 'FILE',
  number: 'N',
  key: 'KEY',
  remedies: 'prints up to five changes that would help, with all that each makes better and worse',
  odds: 'the latest start with such odds to be cured by that day',
  fats: 'the fats that need no entry of their own',
  rules: 'every state and rule, with its evidence',
  schema: 'the JSON Schema of what --json prints',
  fileSchema: 'the JSON Schema of a run file',
  files: (demos: string) => `FILE is a run file, or the bare name of a demo: ${demos}.`,
  count: '--count makes the one run of the file for that many pieces instead.',
  planStatuses:
    'Exit status: 0 planned, 2 no plan (the reasons are printed), 64 something is wrong with the input.',
  statuses: 'Exit status: 0 done, 64 something is wrong with the input.',
};
