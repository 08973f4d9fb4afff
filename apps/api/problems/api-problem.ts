import type { Problem } from '#contract';
import { pathText, type Issue, type Result } from '#units';
import type { Language, Texts } from '#words';
import type { LibraryThing, ProblemTold, ProblemWords, ThingName } from './problem-told.js';
import { toldText, toldValue } from './told-value.js';
import { de } from './words/de.js';
import { en } from './words/en.js';

const words: Readonly<Record<Language, ProblemWords>> = { en, de };

/** A request that cannot be served, as problem details (RFC 9457). Its sentences are made for whoever reads the answer. */
export class ApiProblem extends Error {
  constructor(
    readonly status: number,
    /** The stable end of `type`. */
    readonly slug: string,
    readonly told: ProblemTold,
    readonly extra: Readonly<Record<string, unknown>> = {},
    /** When it is worth trying again. */
    readonly retryAfterS?: number,
    readonly issues?: readonly Issue[],
  ) {
    super(slug);
    this.name = 'ApiProblem';
  }

  body(instance: string, texts: Texts): Problem {
    const say = words[texts.language][this.told.says] as (told: ProblemTold) => Said;
    const { title, detail } = say(this.told);
    const issues = this.issues?.map((issue) => listed(issue, texts));
    const [first, second] = issues ?? [];
    const only = first !== undefined && second === undefined ? `${first.path}: ${first.message}` : detail;
    return {
      type: `urn:benchtide:problem:${this.slug}`,
      title,
      status: this.status,
      ...(only !== undefined && { detail: only }),
      instance,
      ...(issues !== undefined && { issues }),
      ...this.extra,
    };
  }
}

interface Said {
  readonly title: string;
  readonly detail?: string;
}

type ListedIssue = NonNullable<Problem['issues']>[number];

/** An issue with its sentences, and as data for whoever makes others. */
function listed(issue: Issue, texts: Texts): ListedIssue {
  const { code, path, value, accepted, ...params } = issue;
  const field = texts.fieldName(path);
  return {
    code,
    path: toldText(pathText(path)),
    ...(field !== undefined && { field }),
    message: toldText(texts.issue(issue), LONGEST_SENTENCE),
    ...(value !== undefined && { value: toldValue(value) }),
    ...(accepted !== undefined && { accepted: texts.accepted(accepted) }),
    data: { ...params, ...(accepted !== undefined && { accepted }) },
  };
}

/** More than any sentence has whose titles and values are cut. */
const LONGEST_SENTENCE = 1000;

/** Nobody reads more; there may be as many as there are values in what was sent. */
const MOST_ISSUES = 50;

/** What was sent makes no sense; nothing was stored. @param besides how many issues there are besides these */
export function invalidInput(issues: readonly Issue[], besides = 0): ApiProblem {
  const told = issues.slice(0, MOST_ISSUES);
  const more = issues.length - told.length + besides;
  const extra = more > 0 ? { moreIssues: more } : {};
  return new ApiProblem(422, 'invalid-input', { says: 'invalid-input' }, extra, undefined, told);
}

/** The value, or a problem that lists the issues in its way. */
export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw invalidInput(result.issues);
  return result.value;
}

export function notFound(what: ThingName): ApiProblem {
  return new ApiProblem(404, 'not-found', { says: 'no-such-thing', what });
}

export function keyTaken(what: 'run' | LibraryThing, key: string): ApiProblem {
  return new ApiProblem(409, 'key-taken', { says: 'key-taken', what, key });
}

/** @param current what is stored now, as it would be read */
export function staleVersion(current: unknown): ApiProblem {
  return new ApiProblem(409, 'stale-version', { says: 'stale-version' }, { current });
}
