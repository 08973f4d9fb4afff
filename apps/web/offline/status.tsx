import { CloudOff, Send, TriangleAlert } from 'lucide-react';
import { useEffect, useRef, useState, type ReactNode } from 'react';
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
  const bar = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // As much room as it takes is left free at the end of every page, so that it covers no button.
    const shown = bar.current;
    if (shown === null) return;
    const { style } = document.documentElement;
    const observer = new ResizeObserver(() =>
      style.setProperty('--status', `${String(shown.offsetHeight)}px`),
    );
    observer.observe(shown);
    return () => {
      observer.disconnect();
      style.removeProperty('--status');
    };
  }, []);
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
