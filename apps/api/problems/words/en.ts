import type { ProblemWords, TaskName, ThingName } from '../problem-told.js';

const things: Readonly<Record<ThingName, string>> = {
  workshop: 'workshop',
  run: 'run',
  plan: 'plan',
  key: 'key',
  photo: 'photo',
  mould: 'mould',
  fat: 'fat',
  recipe: 'recipe',
  design: 'design',
};

const tasks: Readonly<Record<TaskName, string>> = {
  replan: 'The plan',
  amounts: 'The batch sheet',
  clocks: 'The clocks',
  cure: 'The cure',
  gather: 'The list of what to gather',
  used: 'What the runs have used',
  lessons: 'What the logs have taught',
  teach: 'What the log teaches',
  remedies: 'The search for what could help',
  'what-if': 'The trial',
  'latest-start': 'The search for the latest start',
  judge: 'Judging a plan as it stands',
  'plan-preview': 'The plan of the file',
  'amounts-preview': 'The batch sheet of the file',
  'clocks-preview': 'The clocks of the file',
};

export const en: ProblemWords = {
  'invalid-input': () => ({ title: 'What was sent cannot be used' }),
  'nothing-there': ({ method, path }) => ({ title: `There is nothing at ${method} ${path}` }),
  'no-such-thing': ({ what }) => ({ title: `There is no such ${things[what]}` }),
  'key-taken': ({ what, key }) => ({
    title: `There is already a ${things[what]} “${key}”`,
    detail: 'Choose another short name.',
  }),
  'stale-version': () => ({
    title: 'It was changed elsewhere in the meantime',
    detail: 'Look at what is stored now, and send the change again with its version.',
  }),
  'thing-in-use': ({ what, users }) => ({
    title: `The ${things[what]} is in use`,
    detail: `It is used by ${users.map((user) => `“${user}”`).join(', ')}.`,
  }),
  'equipment-in-use': ({ equipment, user }) => ({
    title: 'Equipment is in use',
    detail: `“${equipment}” is needed by “${user}”.`,
  }),
  'run-begun': () => ({ title: 'The run has begun', detail: 'What is poured cannot be changed any more.' }),
  'run-abandoned': () => ({ title: 'The run was cancelled', detail: 'Nothing more can be logged for it.' }),
  'idempotency-key-reused': () => ({
    title: 'This idempotency key was used for another request',
    detail: 'Use a new key for a new request; the same key repeats the first one.',
  }),
  'bad-idempotency-key': () => ({
    title: 'The idempotency key cannot be used',
    detail: 'Accepted: 8 to 200 printable ASCII characters without spaces, such as a UUID.',
  }),
  'other-site': () => ({
    title: 'Another site may not change anything here',
    detail: 'Use the pages of this program, or send an access key as “Authorization: Bearer KEY”.',
  }),
  'key-needed': () => ({
    title: 'A key is needed',
    detail:
      'Sign in, or send the access key as “Authorization: Bearer KEY”; it is printed at the start and kept in the data folder.',
  }),
  'unknown-host': () => ({ title: 'This machine does not go by that name here' }),
  'wrong-key': () => ({ title: 'This key is not known here', detail: 'It may be mistyped or revoked.' }),
  'wrong-code': () => ({
    title: 'This code does not let anyone in',
    detail:
      'It may be mistyped, used already, or older than 15 minutes. A device that is signed in can make another; so does each start of the program.',
  }),
  'too-many-tries': ({ seconds }) => ({
    title: 'Too many wrong tries',
    detail: `Try again in ${String(seconds)} seconds.`,
  }),
  'own-key': () => ({
    title: 'This is the key you are using',
    detail: 'Sign out to end it, or revoke it from another device.',
  }),
  'demo-gone': () => ({
    title: 'This demo was thrown away',
    detail: 'Nothing was changed. Go on in your own workshop, or open the demo anew.',
  }),
  'not-json': () => ({ title: 'The body must be JSON in UTF-8' }),
  malformed: () => ({ title: 'The request cannot be read', detail: 'The body must be valid JSON.' }),
  'too-large': ({ kilobytes }) => ({
    title: 'The body is too large',
    ...(kilobytes !== undefined && { detail: `At most ${String(kilobytes)} kB are read here.` }),
  }),
  'workshop-busy': () => ({
    title: 'Busy',
    detail: 'Another change to this workshop is still being worked on. Try again in a moment.',
  }),
  'changes-wait': ({ count }) => ({
    title: 'Busy',
    detail: `${String(count)} changes to this workshop wait already. Nothing was changed.`,
  }),
  'task-not-begun': ({ task }) => ({
    title: 'Busy',
    detail: `${tasks[task]} was not begun: too much waits to be worked out already.`,
  }),
  'task-took-too-long': ({ task, seconds }) => ({
    title: 'It took too long',
    detail: `${tasks[task]} was stopped: it may take ${String(seconds)} seconds. Nothing was changed.`,
  }),
  'task-took-too-much-memory': ({ task, megabytes }) => ({
    title: 'It took too much memory',
    detail: `${tasks[task]} was stopped: it may take ${String(megabytes)} MB of memory. Nothing was changed.`,
  }),
  stopping: () => ({ title: 'The program is being stopped', detail: 'Nothing was changed.' }),
  'client-left': () => ({ title: 'The client did not wait for the answer' }),
  'no-database': () => ({
    title: 'The database cannot be reached',
    detail: 'Whether it was stored is not known. Try again in a moment, with the same Idempotency-Key.',
  }),
  'disk-full': ({ folder }) => ({
    title: 'The disk is full',
    detail:
      `The disk ${folder === undefined ? 'of the database' : `that holds ${folder}`} is full, so nothing was stored. ` +
      'Free some space there, then try again.',
  }),
  internal: () => ({ title: 'Something went wrong here', detail: 'It was logged under this number.' }),
};
