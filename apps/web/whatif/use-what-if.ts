import { useEffect, useRef, useState } from 'react';
import { serverNow } from '../api/server-time.js';
import { WhatIfBench, type Told } from './bench.js';
import type { Base, Wish } from './messages.js';

export interface WhatIfRequest {
  /** The same object until something else was read, or the worker has to be sent it anew each time. */
  readonly base: Base;
  readonly wish: Wish;
}

export interface WhatIfState {
  /** The newest answer, perhaps to a request that is a moment old; null before the first. */
  readonly told: Told | null;
  /** Whether it is the full answer to the request as it is now. */
  readonly isSettled: boolean;
  /** The planner could not be run here. */
  readonly broken: string | null;
}

/**
 * What would be, planned on this device as fast as it can, by the same libraries as on the server.
 * @param request null: nothing to ask
 */
export function useWhatIf(request: WhatIfRequest | null): WhatIfState {
  const bench = useRef<WhatIfBench | null>(null);
  const [told, setTold] = useState<Told | null>(null);
  const [broken, setBroken] = useState<string | null>(null);
  const { base = null, wish = null } = request ?? {};
  const asked = wish === null ? '' : JSON.stringify(wish);
  useEffect(() => {
    const made = new WhatIfBench(
      (what) => {
        setBroken(null);
        setTold(what);
      },
      (message) => setBroken(message),
    );
    bench.current = made;
    return () => made.end();
  }, []);
  useEffect(() => {
    if (base === null || asked === '') return;
    bench.current?.ask({ base, wish: JSON.parse(asked) as Wish, nowMin: Math.floor(serverNow() / 60_000) });
  }, [base, asked]);
  const isCurrent = told !== null && told.ask.base === base && JSON.stringify(told.ask.wish) === asked;
  return { told: request === null ? null : told, isSettled: isCurrent && told.isThorough, broken };
}
