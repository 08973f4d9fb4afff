import type { Log } from '../log.js';
import type { Channel } from './channel.js';

/** Notes each delivery, with how late it was. Without the text: logs travel further than a workshop's words should. */
export function logChannel(log: Log): Channel {
  return {
    name: 'log',
    send: async ({ id, workshopId, runId, stage, kind, dueAt, deliveredAt }) => {
      log.info('Nudge delivered', {
        id,
        workshopId,
        runId,
        stage,
        kind,
        lateMs: deliveredAt.getTime() - dueAt.getTime(),
      });
    },
  };
}
