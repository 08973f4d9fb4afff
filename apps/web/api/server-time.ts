let ahead = 0;
let isKnown = false;

/** Takes the server's clock from an answer. It tells whole seconds, half of one off on average. */
export function heardFrom(response: Response): void {
  const date = Date.parse(response.headers.get('date') ?? '');
  if (Number.isNaN(date)) return;
  const heard = date + 500 - Date.now();
  // Answers that were long on their way tell a clock that is late: the one furthest ahead counts.
  if (!isKnown || heard > ahead || Math.abs(heard - ahead) > 5_000) ahead = heard;
  isKnown = true;
}

/** Milliseconds since 1970 by the server's clock, as far as it is known. */
export function serverNow(): number {
  return Date.now() + ahead;
}
