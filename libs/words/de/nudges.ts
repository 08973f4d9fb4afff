import type { NudgeMessage } from '#contract';
import type { MessageWords, Texts } from '../words.js';

/** Was Erinnerungen sagen. */
export const nudges: MessageWords<NudgeMessage> = {
  'nudge.window-opens': ({ stage, startAt, lastCallAt, saidAt }, texts) => {
    const best = startAt === null ? '' : ` Am besten ${texts.timeFrom(saidAt, startAt)}.`;
    return `${stage}: ab jetzt möglich.${best}${lastCall(lastCallAt, saidAt, texts)}`;
  },
  'nudge.now': ({ stage, lastCallAt, saidAt }, texts) =>
    `${stage}: jetzt.${lastCall(lastCallAt, saidAt, texts)}`,
  'nudge.planned': ({ stage, startAt, lastCallAt, saidAt }, texts) =>
    `${stage}: geplant für ${texts.timeFrom(saidAt, startAt)}.${lastCall(lastCallAt, saidAt, texts)}`,
  'nudge.was-planned': ({ stage, startAt, lastCallAt, saidAt }, texts) =>
    `${stage} war für ${texts.timeFrom(saidAt, startAt)} geplant.${lastCall(lastCallAt, saidAt, texts)}`,
  'nudge.last-call': ({ stage, lastCallAt, saidAt }, texts) =>
    lastCallAt === null
      ? `${stage}: letzte Gelegenheit.`
      : `${stage}:${lastCall(lastCallAt, saidAt, texts, 'letzte Gelegenheit')}`,
  'nudge.last-call-over': ({ stage, lastCallAt, saidAt }, texts) =>
    `${stage}: letzte Gelegenheit war ${texts.timeFrom(saidAt, lastCallAt)}. Erst die Seife prüfen, dann weitermachen.`,
};

/** Mit Leerzeichen davor. */
function lastCall(at: string | null, saidAt: string, texts: Texts, words = 'Letzte Gelegenheit'): string {
  return at === null ? '' : ` ${words} ${texts.timeFrom(saidAt, at)}.`;
}
