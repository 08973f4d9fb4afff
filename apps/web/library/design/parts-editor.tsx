import { Trash2 } from 'lucide-react';
import { useState, type ReactNode } from 'react';
import { partKinds, type PartKind } from '#contract/names';
import { SelectField, TextField } from '../../form/fields.js';
import { fieldId, useForm } from '../../form/form-context.js';
import { NumberField, MeasureField } from '../../form/number-field.js';
import { listAt, valueAt, type Path, textAt } from '../../form/values.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { AmountFields } from './amount-fields.js';
import { ColourFields } from './colour-fields.js';
import { withoutPart, withPart, withPartKind } from './design-edits.js';
import type { DesignAround } from './design-around.js';
import { LossFields } from './loss-fields.js';

/** The parts of a piece. */
export function PartsEditor({ around }: { readonly around: DesignAround }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const parts = listAt(content, ['parts']);
  const [opened, setOpened] = useState<number | null>(parts.length === 1 ? 0 : null);
  return (
    <section className="card stack" aria-labelledby={fieldId(['parts'])}>
      <h2 id={fieldId(['parts'])} tabIndex={-1}>
        {library.parts}
      </h2>
      {parts.length === 0 && <p className="soft">{library.noParts}</p>}
      <ul className="strata">
        {parts.map((part, i) => (
          <li key={textAt(part, ['key'])} className={`edge-${String((i % 5) + 1)}`}>
            <PartItem index={i} around={around} isOpen={opened === i} />
          </li>
        ))}
      </ul>
      <div className="row">
        {partKinds.map((kind) => (
          <button
            key={kind}
            type="button"
            className="button"
            onClick={() => {
              setOpened(parts.length);
              change([], withPart(content, kind, library.newPart[kind], library.newPartStage[kind]));
            }}
          >
            + {library.partKinds[kind]}
          </button>
        ))}
      </div>
    </section>
  );
}

function PartItem({
  index,
  around,
  isOpen,
}: {
  readonly index: number;
  readonly around: DesignAround;
  readonly isOpen: boolean;
}): ReactNode {
  const { library, form } = useWords();
  const { content, change } = useForm();
  const path = ['parts', index];
  const part = valueAt(content, path);
  const title = textAt(part, ['title']);
  const kind = valueAt(part, ['kind']) as PartKind;
  const recipe = around.recipes.find(({ key }) => key === valueAt(part, ['recipe']))?.title;
  const mould = around.moulds.find(({ key }) => key === valueAt(part, ['mould']))?.title;
  return (
    <div className="item">
      <details open={isOpen || undefined}>
        <summary>
          <strong>{title === '' ? library.noName : title}</strong>
          <span className="soft small">
            {[library.partKinds[kind], recipe, mould].filter(Boolean).join(' · ')}
          </span>
        </summary>
        <div className="stack">
          <div className="fields">
            <TextField path={[...path, 'title']} label={library.name} />
            <SelectField
              path={[...path, 'kind']}
              label={library.partKind}
              choices={partKinds.map((value) => ({ value, text: library.partKinds[value] }))}
              onChosen={(next) => change([], withPartKind(content, index, next as PartKind))}
            />
          </div>
          {kind === 'batch' && <BatchFields path={path} around={around} />}
          {kind === 'melt-and-pour' && <MeltFields path={path} around={around} />}
          {kind === 'decor' && <DecorFields path={path} around={around} />}
        </div>
      </details>
      <button
        type="button"
        className="icon-button"
        aria-label={`${form.remove}: ${title}`}
        onClick={() => change([], withoutPart(content, index))}
      >
        <Trash2 size={20} aria-hidden />
      </button>
    </div>
  );
}

interface PartFieldsProps {
  readonly path: Path;
  readonly around: DesignAround;
}

function BatchFields({ path, around }: PartFieldsProps): ReactNode {
  const { library } = useWords();
  const { content } = useForm();
  const isCast = valueAt(content, [...path, 'mould']) !== undefined;
  return (
    <>
      <div className="fields">
        <SelectField
          path={[...path, 'recipe']}
          label={library.recipe}
          choices={around.recipes.map(({ key, title }) => ({ value: key, text: title }))}
        />
        <SelectField
          path={[...path, 'mould']}
          label={library.mould}
          none={library.noMouldNeeded}
          choices={around.moulds.map(({ key, title }) => ({ value: key, text: title }))}
        />
        {isCast && (
          <NumberField path={[...path, 'piecesPerCavity']} label={library.piecesPerCavity} preset={1} />
        )}
      </div>
      <AmountFields path={path} ways={isCast ? 'all' : 'open'} />
      <LossFields path={path} />
      <ColourFields path={[...path, 'colourants']} />
    </>
  );
}

function MeltFields({ path, around }: PartFieldsProps): ReactNode {
  const { library } = useWords();
  return (
    <>
      <div className="fields">
        <Material path={path} around={around} none={library.meltBase} />
      </div>
      <AmountFields path={path} ways="open" />
      <LossFields path={path} />
    </>
  );
}

function DecorFields({ path, around }: PartFieldsProps): ReactNode {
  const { library } = useWords();
  return (
    <div className="fields">
      <NumberField path={[...path, 'perPiece']} label={library.perPiece} />
      <MeasureField path={[...path, 'eachG']} label={library.each} dimension="mass" />
      <NumberField path={[...path, 'breakagePercent']} label={library.breakage} unit="%" preset={4} />
      <Material path={path} around={around} none={library.bought} />
    </div>
  );
}

function Material({ path, around, none }: PartFieldsProps & { readonly none: string }): ReactNode {
  const { library } = useWords();
  const { titled } = useTexts();
  const { content } = useForm();
  const chosen = valueAt(content, [...path, 'material']);
  return (
    <SelectField
      path={[...path, 'material']}
      label={library.material}
      none={none}
      // One without a title of its own is an ingredient, of which no decor is made.
      choices={around.workshop.materials
        .filter(({ key, title }) => title !== undefined || key === chosen)
        .map(({ key, title }) => ({ value: key, text: titled(key, title ?? key) }))}
    />
  );
}
