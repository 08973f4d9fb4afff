import { useEffect } from 'react';

/** Lets the service worker keep the pages once they have loaded. Only builds have one. */
export function useServiceWorker(): void {
  useEffect(() => {
    // Browsers have none over plain HTTP from another machine.
    if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
    const register = (): void => {
      navigator.serviceWorker.register('/sw.js').catch((error: unknown) => {
        console.warn('No copies are kept for when there is no connection:', error);
      });
    };
    if (document.readyState === 'complete') register();
    else addEventListener('load', register, { once: true });
    return () => removeEventListener('load', register);
  }, []);
}
