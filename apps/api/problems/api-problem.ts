import type { Problem } from '#contract';
import { pathText, type Issue, type Result } from '#units';
import { toldText, toldValue } from './told-value.js';

/** A request that cannot be served, as problem details (RFC 9457). */
export class ApiProblem extends Error {
  constructor(
    readonly status: number,
    /** The stable end of `type`. */
    readonly slug: string,
    readonly title: string,
    readonly detail?: string,
    readonly extra: Readonly<Record<string, unknown>> = {},
    /** When it is worth trying again. */
    readonly retryAfterS?: number,
  ) {
    super(detail ?? title);
    this.name = 'ApiProblem';
  }

  body(instance: string): Problem {
    return {
      type: `urn:benchtide:problem:${this.slug}`,
      title: this.title,
      status: this.status,
      ...(this.detail === undefined ? {} : { detail: this.detail }),
      instance,
      ...this.extra,
    };
  }
}

/** Nobody reads more; there may be as many as there are values in what was sent. */
const MOST_ISSUES = 50;

/** What was sent makes no sense; nothing was stored. @param besides how many issues there are besides these */
export function invalidInput(issues: readonly Issue[], besides = 0): ApiProblem {
  const listed = issues.slice(0, MOST_ISSUES).map(({ code, path, message, value, accepted }) => ({
    code,
    path: toldText(pathText(path)),
    message: toldText(message),
    ...(value === undefined ? {} : { value: toldValue(value) }),
    ...(accepted === undefined ? {} : { accepted }),
  }));
  const more = issues.length - listed.length + besides;
  const detail = listed.length === 1 ? `${listed[0]?.path ?? ''}: ${listed[0]?.message ?? ''}` : undefined;
  return new ApiProblem(422, 'invalid-input', 'What was sent cannot be used', detail, {
    issues: listed,
    ...(more > 0 && { moreIssues: more }),
  });
}

/** The value, or a problem that lists the issues in its way. */
export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw invalidInput(result.issues);
  return result.value;
}

export function notFound(what: string): ApiProblem {
  return new ApiProblem(404, 'not-found', `There is no such ${what}`);
}

export function keyTaken(what: string, key: string): ApiProblem {
  return new ApiProblem(409, 'key-taken', `There is already a ${what} “${key}”`, 'Choose another key.');
}

/** @param current what is stored now, as it would be read */
export function staleVersion(current: unknown): ApiProblem {
  return new ApiProblem(
    409,
    'stale-version',
    'It was changed elsewhere in the meantime',
    'Look at what is stored now, and send the change again with its version.',
    { current },
  );
}
