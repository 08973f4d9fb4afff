/** Where it is kept by how much the server's clock is ahead, for a page opened out of its reach. */
const KEY = 'benchtide.clock-ahead';

let ahead = kept();
let isKnown = false;

/** Takes the server's clock from an answer. It tells whole seconds, half of one off on average. */
export function heardFrom(response: Response): void {
  const date = Date.parse(response.headers.get('date') ?? '');
  if (Number.isNaN(date)) return;
  const heard = date + 500 - Date.now();
  // Answers that were long on their way tell a clock that is late: the one furthest ahead counts.
  if (!isKnown || heard > ahead || Math.abs(heard - ahead) > 5_000) keep(heard);
  isKnown = true;
}

/** Milliseconds since 1970 by the server's clock, as far as it is known. */
export function serverNow(): number {
  return Date.now() + ahead;
}

function keep(heard: number): void {
  ahead = heard;
  try {
    localStorage.setItem(KEY, String(heard));
  } catch {
    // Without room for it, a page opened out of reach goes by the clock of its device.
  }
}

/** What was last heard on this device; 0 where nothing was. */
function kept(): number {
  try {
    const last = Number(localStorage.getItem(KEY) ?? 0);
    return Number.isFinite(last) ? last : 0;
  } catch {
    return 0;
  }
}
