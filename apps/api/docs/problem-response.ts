const titles: Readonly<Record<number, string>> = {
  400: 'The request cannot be read: a path, a body or an idempotency key that is malformed',
  401: 'No key, or one that is not known',
  403: 'A page of another site asked for it',
  404: 'Nothing of that kind',
  409: 'The key is taken, or the version is not the latest',
  410: 'The demo that it asks for was thrown away',
  413: 'The body is larger than anything this route can have use for',
  415: 'The body is no JSON in UTF-8',
  421: 'This machine does not go by that name',
  422: 'What was sent cannot be used; `issues` says why, field by field',
  429: 'Too many wrong tries; Retry-After says how long to wait',
  500: 'Something went wrong here',
  503: 'Not ready, or the workshop is being worked on; Retry-After says how long to wait',
  507: 'The disk of the database is full, and nothing was stored',
};

interface ProblemResponse {
  readonly description: string;
  readonly content: {
    readonly 'application/problem+json': { readonly schema: { readonly $ref: string } };
  };
}

/** How a failure stands in the API document: every one is a problem document. */
export function problemResponse(status: number): ProblemResponse {
  return {
    description: titles[status] ?? 'Refused',
    content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
  };
}
