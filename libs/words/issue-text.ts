import type { Issue } from '#units';
import type { AcceptedWords } from './accepted-words.js';
import type { IssueWords, Said, Texts } from './words.js';

/** The issue's whole sentence. */
export function issueText(issue: Issue, words: IssueWords, accepted: AcceptedWords, texts: Texts): string {
  const say = words[issue.code] as (issue: Issue, texts: Texts) => Said;
  const said = say(issue, texts);
  const {
    wrong,
    why,
    isWhole = false,
  }: Exclude<Said, string> = typeof said === 'string' ? { wrong: said } : said;
  const wanted =
    issue.accepted === undefined || isWhole ? undefined : accepted.sentence(texts.accepted(issue.accepted));
  return [wrong, wanted, why].filter((sentence) => sentence !== undefined).join(' ');
}
