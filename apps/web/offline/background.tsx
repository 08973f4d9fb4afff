import type { ReactNode } from 'react';
import { useQueueSending } from './use-queue-sending.js';
import { useServiceWorker } from './use-service-worker.js';

/** What goes on behind every page: sending what waits, keeping copies, and saying so. */
export default function Background(): ReactNode {
  useServiceWorker();
  useQueueSending();
  return null;
}
