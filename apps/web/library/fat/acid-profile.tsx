import { Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import { fieldId, useForm } from '../../form/form-context.js';
import { NumberField } from '../../form/number-field.js';
import { valueAt, type Group } from '../../form/values.js';
import { useAmounts } from '../../look/amounts.js';
import { useWords } from '../../words/words.js';
import { fattyAcids, type FattyAcid } from './own-from.js';

const FIELD = 'fattyAcidsPercent';

/** The fatty acids of a fat and their shares, as the sheet lists them. */
export function AcidProfile(): ReactNode {
  const { library, form } = useWords();
  const { content, change } = useForm();
  const { percent } = useAmounts();
  const profile = (valueAt(content, [FIELD]) ?? {}) as Group;
  const told = Object.keys(profile);
  const free = fattyAcids.filter((acid) => !told.includes(acid));
  const sum = Object.values(profile).reduce<number>(
    (total, share) => total + (typeof share === 'number' ? share : 0),
    0,
  );
  const nameOf = (acid: string): string => library.acidsByName[acid as FattyAcid] ?? acid;
  return (
    <section className="card stack" aria-labelledby={fieldId([FIELD])}>
      <div className="stack tight">
        <h2 id={fieldId([FIELD])} tabIndex={-1}>
          {library.profile}
        </h2>
        <p className="soft small">{library.profileHint}</p>
      </div>
      <div className="fields">
        {told.map((acid) => (
          <div key={acid} className="acid">
            <NumberField path={[FIELD, acid]} label={labelOf(acid, nameOf(acid))} unit="%" keep />
            <button
              type="button"
              className="icon-button"
              aria-label={`${form.remove}: ${nameOf(acid)}`}
              onClick={() => change([FIELD, acid], undefined)}
            >
              <Trash2 size={20} aria-hidden />
            </button>
          </div>
        ))}
      </div>
      <div className="row apart">
        <div className="field">
          <label htmlFor="add-acid">{library.addAcid}</label>
          <select id="add-acid" value="" onChange={({ target }) => change([FIELD, target.value], '')}>
            <option value="">…</option>
            {free.map((acid) => (
              <option key={acid} value={acid}>
                {labelOf(acid, nameOf(acid))}
              </option>
            ))}
          </select>
        </div>
        <p role="status">
          <strong className="numbers">{library.sum(percent(sum))}</strong>
        </p>
      </div>
    </section>
  );
}

/** Its name, and its number of carbons and double bonds where it goes by one. */
function labelOf(acid: string, name: string): string {
  return name === acid || !/^C\d/.test(acid) ? name : `${name} ${acid}`;
}
