import type { Unreadable } from '../../read-text.js';
import type { YamlFault } from '../../yaml-faults.js';

const unreadable: { readonly [S in Unreadable['says']]: (why: Extract<Unreadable, { says: S }>) => string } =
  {
    'no-such-file': () => 'cannot be read: there is no such file.',
    folder: () => 'cannot be read: it is a folder.',
    forbidden: () => 'cannot be read: you may not read it.',
    failed: ({ code }) => `cannot be read: ${code}.`,
    'too-large': ({ megabytes }) => `is too large; accepted: up to ${String(megabytes)} MB.`,
    'utf-16': () => 'is written in UTF-16; accepted: UTF-8. Save it as UTF-8.',
    'not-utf-8': () => 'is not written in UTF-8, perhaps in Latin-1; accepted: UTF-8. Save it as UTF-8.',
  };

const yaml: Readonly<Record<YamlFault, string>> = {
  alias: 'An alias (*) or anchor (&) is wrong here: it needs a name that was set before, and nothing else.',
  'aliases-unfold': 'An alias (*) points to nothing, or aliases unfold without end.',
  'block-in-flow': 'Inside [ ] and { } only lists and groups in [ ] and { } can stand.',
  collection: 'This tag (!) does not fit a list or a group.',
  directive: 'A line that begins with % is none that YAML knows.',
  escape:
    'After \\ in double quotes stands no sign that YAML knows. Write \\\\ for a backslash, or use single quotes.',
  indent: 'The line is indented too far or too little. Things of one list or group begin below each other.',
  'key-on-one-line': 'A field’s name must stand on one line, with a colon and a space after it.',
  'key-too-long': 'A field’s name is longer than 1024 characters; perhaps a quote is not closed.',
  'list-as-key': 'A list or a group cannot begin here. Begin it on a line of its own, indented.',
  'missing-sign': 'A sign is missing here: a colon, a comma, a dash, a space, a bracket or a closing quote.',
  order: 'A tag (!) or anchor (&) must stand after the dash or the colon, and once only.',
  'start-of-text': 'A text cannot begin with this sign. Put the text in quotes.',
  tab: 'The line is indented with a tab. Use spaces.',
  tag: 'The tag (!) is not known. Leave it out.',
  'too-deep': 'Too many lists and groups stand inside each other.',
  'two-documents': 'A second document begins here (---). Only one can stand in a file.',
  unexpected:
    'Something stands here that does not belong here: a sign too many, or a quote or bracket missing before.',
};

/** What is wrong with a file itself. */
export const file = {
  unreadable: (why: Unreadable): string => (unreadable[why.says] as (why: Unreadable) => string)(why),
  yaml: (fault: YamlFault) => `not valid YAML: ${yaml[fault]}`,
  unknownYaml: (line: string, column: string) =>
    `not valid YAML: from line ${line}, column ${column} on it cannot be read.`,
  twice: (name: string) => `“${name}” stands here twice; accepted: once.`,
  earlierForm:
    'The file is in form 2 and is read as form 3: its stages also wait for the soap as their kinds say. What was added stands in the plan.',
  more: (count: string) => `… and ${count} more.`,
  cannotWrite: (code: string) => `The output cannot be written: ${code}.`,
};
