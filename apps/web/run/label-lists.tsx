import type { ReactNode } from 'react';
import { ingredientsText } from '#words';
import type { Schemas } from '../api/client.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';

/** The list of ingredients of a part, in the two ways in which a label may have it. */
export function LabelLists({ label }: { readonly label: Schemas['PartLabel'] }): ReactNode {
  const { label: words } = useWords().run.sheet;
  const texts = useTexts();
  return (
    <section className="stack tight sheet-label">
      <h3>{words.title}</h3>
      <p className="soft small">{words.how}</p>
      {(['asPutIn', 'asSoap'] as const).map((way) => (
        <p key={way} className="small">
          {words[way]}: <span translate="no">{ingredientsText(label[way], label, texts)}</span>
        </p>
      ))}
      {label.unknownAllergens.length > 0 && (
        <p className="small">{words.allergensUnknown(texts.and(label.unknownAllergens.map(texts.quoted)))}</p>
      )}
    </section>
  );
}
