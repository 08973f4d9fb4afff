import type { SettingsWords } from '../words/en/settings.js';
import { lazyWords } from '../words/lazy-words.js';

/** The texts about the settings in the language that was chosen. */
export const useSettingsWords = lazyWords<SettingsWords>({
  en: async () => (await import('../words/en/settings.js')).settings,
  de: async () => (await import('../words/de/settings.js')).settings,
});
