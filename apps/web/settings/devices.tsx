import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useSettingsWords } from './settings-words.js';
import { answered, api, type Schemas } from '../api/client.js';
import { useTimes } from '../look/times.js';
import { Confirm } from '../shell/confirm.js';
import { Failed, Loading } from '../shell/states.js';
import { AddDevice } from './add-device.js';
import { RenameDevice } from './rename-device.js';

type Key = Schemas['AccessKey'];

/** Who holds a key, each to be ended, and a way to let one more device in. */
export function Devices(): ReactNode {
  const settings = useSettingsWords();
  const queries = useQueryClient();
  const { data, error, refetch } = useQuery({
    queryKey: ['keys'],
    queryFn: () => answered(api.GET('/api/keys')),
  });
  const end = useMutation({
    mutationFn: ({ id }: Key) => answered(api.DELETE('/api/keys/{id}', { params: { path: { id } } })),
    onSettled: () => queries.invalidateQueries({ queryKey: ['keys'] }),
  });
  return (
    <>
      <p className="soft small">{settings.devicesHow}</p>
      {data !== undefined ? (
        <ul className="keys">
          {data.map((key) => (
            <KeyLine key={key.id} held={key} busy={end.isPending} onEnd={() => end.mutate(key)} />
          ))}
        </ul>
      ) : error !== null ? (
        <Failed error={error} again={() => void refetch()} />
      ) : (
        <Loading />
      )}
      <p role="status" className="soft small">
        {end.isSuccess && settings.ended(end.variables.label)}
      </p>
      {end.error !== null && <Failed error={end.error} again={() => end.reset()} />}
      <AddDevice />
    </>
  );
}

function KeyLine({
  held,
  busy,
  onEnd,
}: {
  readonly held: Key;
  readonly busy: boolean;
  readonly onEnd: () => void;
}): ReactNode {
  const settings = useSettingsWords();
  const times = useTimes();
  return (
    <li className="row apart">
      <span>
        <strong>{held.label}</strong>
        {held.current && ` (${settings.thisDevice})`}
        <br />
        <span className="soft small">
          {settings.since(times.date(held.createdAt))}
          {held.lastSeenAt !== null &&
            !held.current &&
            ` · ${settings.lastSeen(times.dayTime(held.lastSeenAt))}`}
        </span>
      </span>
      <span className="row">
        <RenameDevice held={held} />
        {!held.current && (
          <Confirm
            label={settings.end}
            name={settings.endThis(held.label)}
            ask={settings.endAsk(held.label)}
            yes={settings.endYes}
            no={settings.keep}
            className="button plain"
            busy={busy}
            onYes={onEnd}
          />
        )}
      </span>
    </li>
  );
}
