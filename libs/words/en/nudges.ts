import type { NudgeMessage } from '#contract';
import type { MessageWords, Texts } from '../words.js';

/** What nudges say. */
export const nudges: MessageWords<NudgeMessage> = {
  'nudge.window-opens': ({ stage, startAt, lastCallAt, saidAt }, texts) => {
    const best = startAt === null ? '' : ` Best at ${texts.timeFrom(saidAt, startAt)}.`;
    return `${stage}: you can start.${best}${lastCall(lastCallAt, saidAt, texts)}`;
  },
  'nudge.now': ({ stage, lastCallAt, saidAt }, texts) =>
    `${stage} now.${lastCall(lastCallAt, saidAt, texts)}`,
  'nudge.planned': ({ stage, startAt, lastCallAt, saidAt }, texts) =>
    `${stage}: planned for ${texts.timeFrom(saidAt, startAt)}.${lastCall(lastCallAt, saidAt, texts)}`,
  'nudge.was-planned': ({ stage, startAt, lastCallAt, saidAt }, texts) =>
    `${stage} was planned for ${texts.timeFrom(saidAt, startAt)}.${lastCall(lastCallAt, saidAt, texts)}`,
  'nudge.last-call': ({ stage, lastCallAt, saidAt }, texts) =>
    lastCallAt === null
      ? `${stage}: last call.`
      : `${stage}:${lastCall(lastCallAt, saidAt, texts, 'last call')}`,
  'nudge.last-call-over': ({ stage, lastCallAt, saidAt }, texts) =>
    `${stage}: last call was at ${texts.timeFrom(saidAt, lastCallAt)}. Check the soap before you go on.`,
};

/** With a blank before it. */
function lastCall(at: string | null, saidAt: string, texts: Texts, words = 'Last call'): string {
  return at === null ? '' : ` ${words} at ${texts.timeFrom(saidAt, at)}.`;
}
