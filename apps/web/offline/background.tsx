import type { ReactNode } from 'react';
import { Nudges } from '../now/nudges.js';
import { Status } from './status.js';
import { useQueueSending } from './use-queue-sending.js';
import { useServiceWorker } from './use-service-worker.js';

/** What goes on behind every page: nudges that arrive, entries that are sent, copies that are kept. */
export default function Background(): ReactNode {
  useServiceWorker();
  useQueueSending();
  return (
    <>
      <Status />
      <Nudges />
    </>
  );
}
