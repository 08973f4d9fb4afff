import type { Schemas } from '../api/client.js';
import { useAmounts } from '../look/amounts.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import type { Document } from './use-run.js';

/** What an entry of the log says, with the titles of the run's parts and stages. */
export function useEntryText(document: Document, run: string): (entry: Schemas['LogEntry']) => string {
  const { log, mishap } = useWords().run;
  const { mass } = useAmounts();
  const { states } = useTexts().names;
  const own = document.runs.find((each) => each.run === run);
  const stage = (key: string): string => own?.stages.find((each) => each.key === key)?.title ?? key;
  const part = (key: string): string => own?.amounts.find((each) => each.part === key)?.title ?? key;
  return (entry) => {
    const { entries } = log;
    switch (entry.kind) {
      case 'done':
        return entries.done(stage(entry.stage));
      case 'not-yet':
        return entries['not-yet'](stage(entry.stage));
      case 'mishap':
        return entry.onPurpose === true
          ? entries['left-out'](part(entry.part))
          : entries.mishap(part(entry.part), mishap.kinds[entry.mishap]);
      case 'seen':
        return entries.seen(part(entry.part), states[entry.state].is, log.saw[entry.saw]);
      case 'weighed':
        return entries.weighed(part(entry.part), entry.pieces, mass(entry.usedG));
      case 'weigh-in':
        return entries['weigh-in'](entry.pieces, mass(entry.massG));
      case 'note':
        return entry.stage === undefined ? entries.note : entries.noteAt(stage(entry.stage));
      case 'forget':
        return entries.forget;
      case 'take-back':
        return entries['take-back'];
    }
  };
}
