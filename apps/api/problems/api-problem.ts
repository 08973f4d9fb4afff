import type { Problem } from '#contract';
import { pathText, type Issue, type Result } from '#units';

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

/** What was sent makes no sense; nothing was stored. */
export function invalidInput(issues: readonly Issue[]): ApiProblem {
  const listed = issues.map(({ code, path, message, value, accepted }) => ({
    code,
    path: pathText(path),
    message,
    ...(value === undefined ? {} : { value }),
    ...(accepted === undefined ? {} : { accepted }),
  }));
  const detail = listed.length === 1 ? `${listed[0]?.path ?? ''}: ${listed[0]?.message ?? ''}` : undefined;
  return new ApiProblem(422, 'invalid-input', 'What was sent cannot be used', detail, { issues: listed });
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
