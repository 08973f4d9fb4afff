import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useSettingsWords } from './settings-words.js';
import { Link } from 'react-router';
import { answered, api } from '../api/client.js';
import { useTimes } from '../look/times.js';

/** Where nudges arrive, and which comes next, so that the maker sees that it will come. */
export function Nudges(): ReactNode {
  const settings = useSettingsWords();
  const times = useTimes();
  const { data } = useQuery({
    queryKey: ['nudges', 'waiting'],
    queryFn: () => answered(api.GET('/api/nudges', { params: { query: { status: 'waiting' } } })),
  });
  const next = data?.[0];
  return (
    <div className="stack tight">
      <p>{settings.inbox}</p>
      {data !== undefined && (
        <p className="soft">
          {next === undefined
            ? settings.noNudge
            : settings.nextNudge(times.dayTime(next.dueAt), next.message.stage)}
        </p>
      )}
      <p>
        <Link className="link tap" to="/hours">
          {settings.toHours}
        </Link>
      </p>
    </div>
  );
}
