import { useQueryClient } from '@tanstack/react-query';
import { BellRing, X } from 'lucide-react';
import { useEffect, useState, type ReactNode } from 'react';
import { Link } from 'react-router';
import type { Schemas } from '../api/client.js';
import { serverNow } from '../api/server-time.js';
import { useTexts } from '../look/use-texts.js';
import { useTimes } from '../look/times.js';
import { useRoomAtEnd } from '../look/use-room-at-end.js';
import { useWords } from '../words/words.js';
import { whenSent } from '../offline/queue-news.js';
import { callOnce } from './alarm.js';
import { renewChanged } from './changed-elsewhere.js';
import { followInbox } from './inbox-stream.js';
import { withNudge } from './nudge-news.js';
import './nudges.css';
import { useMaySound } from './use-may-sound.js';

/** Nudges that arrive while the page is open. */
export function Nudges(): ReactNode {
  const { now, shell } = useWords();
  const times = useTimes();
  const texts = useTexts();
  const [shown, dismiss] = useArrivals();
  const room = useRoomAtEnd('--nudges');
  return (
    <section
      ref={room}
      className="nudges"
      aria-label={now.nudges.region}
      aria-live="polite"
      aria-relevant="additions"
    >
      {shown.map(({ id, message, deliveredAt, dueAt }) => (
        <div key={id} className="card nudge">
          <BellRing size={22} aria-hidden />
          <div>
            <p className="small soft numbers">{now.nudges.at(times.time(deliveredAt ?? dueAt))}</p>
            <p>{texts.of(message)}</p>
            <p>
              <Link className="tap" to="/" onClick={() => dismiss(id)}>
                {shell.toNow}
              </Link>
            </p>
          </div>
          <button
            type="button"
            className="button plain"
            aria-label={now.nudges.dismiss(texts.of(message))}
            onClick={() => dismiss(id)}
          >
            <X size={22} aria-hidden />
          </button>
        </div>
      ))}
    </section>
  );
}

/** What has arrived and was not dismissed, here or in another tab. */
function useArrivals(): readonly [readonly Schemas['InboxEntry'][], (id: string) => void] {
  const queries = useQueryClient();
  const maySound = useMaySound();
  const [shown, setShown] = useState<readonly Schemas['InboxEntry'][]>([]);
  const [tabs] = useState(() => new BroadcastChannel('benchtide.dismissed'));
  useEffect(() => {
    const onDismissed = ({ data }: MessageEvent<string>): void => setShown(without(data));
    tabs.addEventListener('message', onDismissed);
    return () => tabs.removeEventListener('message', onDismissed);
  }, [tabs]);
  useEffect(
    () =>
      followInbox(
        (entry) => {
          setShown((before) => withNudge(before, entry, serverNow()));
          for (const key of ['nudges', 'inbox', 'runs']) void queries.invalidateQueries({ queryKey: [key] });
          void queries.invalidateQueries({ queryKey: ['plan', entry.runId] });
          const isNew = withNudge([], entry, serverNow()).length > 0;
          if (entry.kind === 'last-call' && isNew && maySound()) void callOnce(entry);
        },
        (runIds) => {
          const keys = runIds.length === 0 ? [['plan']] : runIds.map((id) => ['plan', id]);
          for (const queryKey of keys) void queries.invalidateQueries({ queryKey });
        },
        renewChanged(queries),
      ),
    [queries, maySound],
  );
  useEffect(
    () =>
      whenSent(({ runId, entry }) => {
        if (entry.kind !== 'done') return;
        // Whoever has done it need not be told to.
        setShown((before) => before.filter((n) => n.runId !== runId || n.stage !== entry.stage));
      }),
    [],
  );
  const dismiss = (id: string): void => {
    setShown(without(id));
    tabs.postMessage(id);
  };
  return [shown, dismiss];
}

function without(id: string) {
  return (shown: readonly Schemas['InboxEntry'][]): readonly Schemas['InboxEntry'][] =>
    shown.filter((nudge) => nudge.id !== id);
}
