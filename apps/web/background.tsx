import type { ReactNode } from 'react';
import { Nudges } from './now/nudges.js';
import { Status } from './offline/status.js';
import { useQueueSending } from './offline/use-queue-sending.js';
import { useServiceWorker } from './offline/use-service-worker.js';
import { useWritingWaitingLines } from './stock/use-stock.js';

/** What goes on behind every page: nudges that arrive, entries that are sent, copies that are kept. */
export default function Background(): ReactNode {
  useServiceWorker();
  useQueueSending();
  useWritingWaitingLines();
  return (
    <>
      <Status />
      <Nudges />
    </>
  );
}
