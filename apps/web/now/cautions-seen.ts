import { useSyncExternalStore } from 'react';
import type { Caution } from '#contract';
import { serverNow } from '../api/server-time.js';
import { keptHere } from '../preferences/kept-here.js';

/** No sitting is longer; after it, all cautions are shown again. */
const FOR_MS = 12 * 60 * 60_000;

/** When each caution was read last, by its code, in milliseconds since 1970. */
type Seen = Readonly<Record<string, number>>;

const seen = keptHere<Seen>('benchtide.cautions-seen', (kept) =>
  typeof kept === 'object' && kept !== null ? (kept as Seen) : {},
);

/** Whether cautions have been read in this sitting, on this device, and the way to say so. */
export function useCautionsSeen(cautions: readonly Caution[]): readonly [boolean, () => void] {
  const all = useSyncExternalStore(seen.onChange, seen.get);
  const now = serverNow();
  const isSeen = cautions.every(({ code }) => (all[code] ?? -Infinity) > now - FOR_MS);
  const say = (): void => {
    const read = Object.fromEntries(cautions.map(({ code }) => [code, serverNow()]));
    seen.set({ ...all, ...read });
  };
  return [isSeen, say];
}

/** Each caution once, those of lye first. */
export function distinctCautions(cautions: readonly Caution[]): Caution[] {
  const isOfLye = ({ code }: Caution): boolean => code.startsWith('caution.lye');
  const once = cautions.filter((each, i) => cautions.findIndex(({ code }) => code === each.code) === i);
  return [...once.filter(isOfLye), ...once.filter((each) => !isOfLye(each))];
}
