import { textsFor, type Texts } from '#words';
import { useTimeZone } from '../session/session.js';
import { usePreference } from '../preferences/preferences.js';
import { useSaid } from '../words/words.js';

/** Makes the sentences of messages, in the language, units and time zone that were chosen on this device. */
export function useTexts(): Texts {
  const { language, sentences } = useSaid();
  const [units] = usePreference('units');
  return textsFor({ language, units, timeZone: useTimeZone() }, sentences);
}
