import { useQuery } from '@tanstack/react-query';
import { useCallback, useEffect } from 'react';
import { answered, api } from '../api/client.js';
import { serverNow } from '../api/server-time.js';
import { usePreference } from '../preferences/preferences.js';
import { readyToSound } from './alarm.js';
import { isQuiet } from '../look/wall-clock.js';

/** Tells whether a last call may be heard: if the maker allowed it, and never in quiet hours. */
export function useMaySound(): () => boolean {
  const [isAllowed] = usePreference('sound');
  const { data } = useQuery({
    queryKey: ['workshop'],
    queryFn: () => answered(api.GET('/api/workshop')),
    enabled: isAllowed,
  });
  useEffect(() => (isAllowed ? readyToSound() : undefined), [isAllowed]);
  return useCallback(() => {
    if (!isAllowed || data === undefined) return false;
    const { hours, timeZone } = data.facts;
    return !isQuiet(serverNow(), hours.quiet, timeZone);
  }, [isAllowed, data]);
}
