import { useSyncExternalStore } from 'react';
import { serverNow } from '../../api/server-time.js';
import { keptHere } from '../../preferences/kept-here.js';
import { latest, readWeighed, type Ticks } from './weighed.js';

const weighed = keptHere('benchtide.weighed', readWeighed);

const none: Ticks = {};

/**
 * What was ticked of a batch on this device, through reloads, and the way to change it.
 * @param batch names the batch and its run
 */
export function useTicks(batch: string): readonly [Ticks, (change: (ticks: Ticks) => Ticks) => void] {
  const all = useSyncExternalStore(weighed.onChange, weighed.get);
  const change = (by: (ticks: Ticks) => Ticks): void => {
    const now = weighed.get();
    const ticks = by(now[batch]?.ticks ?? none);
    weighed.set(latest({ ...now, [batch]: { at: serverNow(), ticks } }));
  };
  return [all[batch]?.ticks ?? none, change];
}
