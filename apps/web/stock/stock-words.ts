import { use } from 'react';
import type { StockWords } from '../words/en/stock.js';
import { useLanguage, type Language } from '../words/words.js';

const loaders: Readonly<Record<Language, () => Promise<{ readonly stock: StockWords }>>> = {
  en: () => import('../words/en/stock.js'),
  de: () => import('../words/de/stock.js'),
};

const loaded = new Map<Language, Promise<StockWords>>();

/** The texts about stock in the language that was chosen; the page waits for them as for its own script. */
export function useStockWords(): StockWords {
  return use(textsIn(useLanguage()));
}

function textsIn(language: Language): Promise<StockWords> {
  let texts = loaded.get(language);
  if (texts === undefined) {
    texts = loaders[language]().then(({ stock }) => stock);
    // A lost connection must not be remembered.
    texts.catch(() => loaded.delete(language));
    loaded.set(language, texts);
  }
  return texts;
}
