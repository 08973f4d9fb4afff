import { CloudOff, Send, TriangleAlert } from 'lucide-react';
import { useState, type ReactNode } from 'react';
import { useRoomAtEnd } from '../look/use-room-at-end.js';
import { useTimes } from '../look/times.js';
import { useWords } from '../words/words.js';
import { useConnection } from '../api/connection.js';
import { QueueDialog } from './queue-dialog.js';
import './status.css';
import { useLogQueue } from './use-log-queue.js';

/** Says that there is no connection and how old the page is, and what waits to be sent. */
export function Status(): ReactNode {
  const { shell, offline } = useWords();
  const times = useTimes();
  const { isLost, oldestCopy } = useConnection();
  const queue = useLogQueue();
  const [isOpen, setOpen] = useState(false);
  const refused = queue.filter(({ refusal }) => refusal !== undefined).length;
  const waiting = queue.length - refused;
  const bar = useRoomAtEnd('--status');
  return (
    <>
      <div ref={bar} className="connection" role="status">
        {isLost && (
          <p className="pill">
            <CloudOff size={18} aria-hidden />
            {oldestCopy === undefined ? shell.noAnswer : shell.offline(times.dayTime(oldestCopy))}
          </p>
        )}
        {waiting > 0 && (
          <button type="button" className="pill" onClick={() => setOpen(true)}>
            <Send size={18} aria-hidden /> {shell.waiting(waiting)}
          </button>
        )}
        {refused > 0 && (
          <button type="button" className="pill wrong" onClick={() => setOpen(true)}>
            <TriangleAlert size={18} aria-hidden /> {offline.refused(refused)}
          </button>
        )}
      </div>
      {isOpen && <QueueDialog onClose={() => setOpen(false)} />}
    </>
  );
}
