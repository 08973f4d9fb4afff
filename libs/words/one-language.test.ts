import { describe, expect, it } from 'vitest';
import type { Message, Risk } from '#contract';
import type { Issue } from '#units';
import { textsFor, type Language } from '#words';
import { en } from '#words/en';
import { wordsOf } from '#words/all';
import { issueSample, issueValues, issueVariants } from '../../tests/support/issue-samples.js';
import { messageSamples } from '../../tests/support/message-samples.js';
import { foreignIn, type Wanted } from '../../tests/support/one-language.js';

const messages = messageSamples();

function said(language: Language, units: 'metric' | 'us'): string[] {
  const texts = textsFor({ language, units, timeZone: 'Europe/Dublin' }, wordsOf[language]);
  const lines = messages.flatMap((message) => [
    `${message.code}: ${texts.of(message)}`,
    ...(isRisk(message) ? [`remedy of ${message.code}: ${texts.remedyOf(message)}`] : []),
  ]);
  return [...new Set(lines)];
}

function isRisk(message: Message): message is Risk {
  return Object.hasOwn(en.riskRemedies, message.code);
}

/** Finds of each line, after its code. */
function wrong(lines: readonly string[], wanted: Wanted): string[] {
  return lines.flatMap((line) => {
    const colon = line.indexOf(': ');
    return foreignIn(line.slice(colon + 2), wanted).map((find) => `${line.slice(0, colon)}: ${find}`);
  });
}
const systems = ['metric', 'us'] as const;

const forms = Object.keys(en.accepted.forms).map((form) => ({ accepted: { kind: 'form', form } }));

function saidOfIssues(language: Language, units: 'metric' | 'us'): string[] {
  const texts = textsFor({ language, units, timeZone: 'Europe/Dublin' }, wordsOf[language]);
  const lines = Object.keys(en.issues).flatMap((code) =>
    [{}, ...issueVariants, ...forms, ...(code.startsWith('input.') ? issueValues : [])].map(
      (other) => `${code}: ${texts.issue({ ...issueSample, ...other, code } as unknown as Issue)}`,
    ),
  );
  return [...new Set(lines)];
}

describe.each(['en', 'de'] as const)('in %s', (language) => {
  it.each(systems)('every issue is whole, and in one language and %s units', (units) => {
    expect(wrong(saidOfIssues(language, units), { language, units })).toEqual([]);
  });
  it.each(systems)('every message is whole, and in one language and %s units', (units) => {
    expect(wrong(said(language, units), { language, units })).toEqual([]);
  });
});

it('makes up every message of the contract, in several forms', () => {
  expect([...new Set(messages.map(({ code }) => code))].sort()).toEqual(Object.keys(en.messages).sort());
  expect(messages.length).toBeGreaterThan(1000);
});
