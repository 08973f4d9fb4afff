import { useEffect } from 'react';

/** Keeps the screen on (Screen Wake Lock, W3C) while something is going on and the page can be seen. */
export function useWakeLock(isWanted: boolean): void {
  useEffect(() => {
    if (!isWanted || !('wakeLock' in navigator)) return;
    let isOver = false;
    let held: WakeLockSentinel | undefined;
    const take = async (): Promise<void> => {
      // The browser lets go of it by itself whenever the page is hidden.
      if (document.visibilityState !== 'visible' || (held !== undefined && !held.released)) return;
      try {
        const taken = await navigator.wakeLock.request('screen');
        if (isOver) await taken.release();
        else held = taken;
      } catch {
        // A low battery, or a browser that is told not to: the screen goes dark as it always did.
      }
    };
    const onVisible = (): void => void take();
    void take();
    document.addEventListener('visibilitychange', onVisible);
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', onVisible);
      void held?.release();
    };
  }, [isWanted]);
}
