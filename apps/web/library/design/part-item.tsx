import { Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import { Link, useParams } from 'react-router';
import { keptWays, partKinds, usualKept, type PartKind } from '#contract/names';
import { SelectField, TextField } from '../../form/fields.js';
import { useForm } from '../../form/form-context.js';
import { MeasureField, NumberField } from '../../form/number-field.js';
import { listAt, textAt, valueAt, type Path } from '../../form/values.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { AmountFields } from './amount-fields.js';
import { ColourFields } from './colour-fields.js';
import type { DesignAround } from './design-around.js';
import {
  batchOf,
  mixedWith,
  withoutPart,
  withPartKind,
  withPartTitle,
  withPreparation,
  withMeltMould,
} from './design-edits.js';
import { ItemDetails } from './item-details.js';
import { LossFields } from './loss-fields.js';
import { newForPiece } from './made-for-piece.js';
import { PortionFields } from './portion-fields.js';
import { usePieceTitles } from './patterns/use-piece-titles.js';

/** One part: what it is made of, in what, and how much of it a piece takes. */
export function PartItem({
  index,
  around,
  isFresh,
}: {
  readonly index: number;
  readonly around: DesignAround;
  readonly isFresh: boolean;
}): ReactNode {
  const { library, form } = useWords();
  const { content, change } = useForm();
  const titles = usePieceTitles();
  const path = ['parts', index];
  const part = valueAt(content, path);
  const title = textAt(part, ['title']);
  const kind = valueAt(part, ['kind']) as PartKind;
  const recipe = around.recipes.find(({ key }) => key === valueAt(part, ['recipe']))?.title;
  const mould = around.moulds.find(({ key }) => key === valueAt(part, ['mould']))?.title;
  const isSplit = listAt(part, ['portions']).length > 0;
  const line = [library.partKinds[kind], recipe, mould].filter(Boolean).join(' · ');
  return (
    <div className="item">
      <ItemDetails list="parts" index={index} title={title} line={line} isFresh={isFresh}>
        <TextField
          path={[...path, 'title']}
          label={library.name}
          onSet={(next) => change([], withPartTitle(content, index, next, titles))}
        />
        {kind === 'batch' && <BatchFields path={path} around={around} />}
        {kind === 'batch' && isSplit && <PortionFields path={[...path, 'portions']} />}
        {kind === 'melt-and-pour' && <MeltFields path={path} index={index} around={around} />}
        {kind === 'decor' && <DecorFields path={path} around={around} />}
        <details className="more">
          <summary>{library.moreOfPart}</summary>
          <div className="stack">
            <SelectField
              path={[...path, 'kind']}
              label={library.partKind}
              choices={partKinds.map((value) => ({ value, text: library.partKinds[value] }))}
              onChosen={(next) => change([], withPartKind(content, index, next as PartKind, titles))}
            />
            {kind !== 'decor' && (
              <>
                <NumberField path={[...path, 'spreadPercent']} label={library.spread} unit="%" preset={4} />
                <LossFields path={path} />
              </>
            )}
            {kind === 'batch' && !isSplit && <ColourFields path={[...path, 'colourants']} />}
            {kind === 'batch' && <MixedWith index={index} />}
            {kind === 'batch' && <PreparationButton index={index} />}
          </div>
        </details>
      </ItemDetails>
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
  const { library, patterns } = useWords();
  const { content } = useForm();
  const { id = 'new' } = useParams();
  const part = textAt(content, [...path, 'key']);
  const isCast = valueAt(content, [...path, 'mould']) !== undefined;
  return (
    <>
      <div className="fields">
        <SelectField
          path={[...path, 'recipe']}
          label={library.recipe}
          choices={around.recipes.map(({ key, title }) => ({ value: key, text: title }))}
          hint={<Link to={newForPiece('recipes', id, part)}>{patterns.newRecipe}</Link>}
        />
        <MouldFields path={path} around={around} />
        {isCast && <KeptField path={path} around={around} />}
      </div>
      <AmountFields path={path} ways={isCast ? 'all' : 'open'} />
    </>
  );
}

/** How the mould stands after the pour, with what is taken while nobody says it. */
function KeptField({ path, around }: PartFieldsProps): ReactNode {
  const { heat } = useWords();
  const { content } = useForm();
  const key = valueAt(content, [...path, 'mould']);
  const mould = around.moulds.find((each) => each.key === key);
  return (
    <SelectField
      path={[...path, 'kept']}
      label={heat.keptLabel}
      none={mould === undefined ? '…' : heat.usual(heat.kept[usualKept(mould.kind)])}
      choices={keptWays.map((value) => ({ value, text: heat.kept[value] }))}
      hint={heat.keptHint}
    />
  );
}

/** The mould that a part is cast in, and how its cavities come to pieces. */
function MouldFields({
  path,
  around,
  onChosen,
}: PartFieldsProps & { readonly onChosen?: (mould: string | undefined) => void }): ReactNode {
  const { library, patterns } = useWords();
  const { content } = useForm();
  const { id = 'new' } = useParams();
  const part = textAt(content, [...path, 'key']);
  const isCast = valueAt(content, [...path, 'mould']) !== undefined;
  const isOfCavity = valueAt(content, [...path, 'amount', 'by']) === 'cavity';
  return (
    <>
      <SelectField
        path={[...path, 'mould']}
        label={library.mould}
        none={isOfCavity ? '…' : library.noMouldNeeded}
        choices={around.moulds.map(({ key, title }) => ({ value: key, text: title }))}
        hint={<Link to={newForPiece('moulds', id, part)}>{patterns.newMould}</Link>}
        {...(onChosen && { onChosen })}
      />
      {isCast && (
        <>
          <NumberField path={[...path, 'piecesPerCavity']} label={library.piecesPerCavity} preset={1} />
          <NumberField path={[...path, 'cavitiesPerPiece']} label={library.cavitiesPerPiece} preset={1} />
        </>
      )}
    </>
  );
}

/** Another part of the same recipe that is mixed at once with this one. */
function MixedWith({ index }: { readonly index: number }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const titles = usePieceTitles();
  const parts = listAt(content, ['parts']);
  const recipe = valueAt(parts[index], ['recipe']);
  const batches = new Map<string, number>();
  parts.forEach((each, i) => {
    const isOther =
      i !== index && valueAt(each, ['kind']) === 'batch' && valueAt(each, ['recipe']) === recipe;
    const batch = batchOf(each);
    if (isOther && recipe !== undefined && typeof batch === 'string' && !batches.has(batch))
      batches.set(batch, i);
  });
  if (batches.size === 0) return null;
  return (
    <SelectField
      path={['parts', index, 'batch']}
      label={library.mixedWith}
      none={library.mixedAlone}
      choices={[...batches].map(([batch, i]) => ({
        value: batch,
        text: textAt(parts[i], ['title']) || library.noName,
      }))}
      hint={library.mixedHow}
      onChosen={(batch) =>
        change([], mixedWith(content, index, batch === undefined ? undefined : batches.get(batch), titles))
      }
    />
  );
}

/** Making and cooling the lye, melting the fats and mixing, as stages of their own. */
function PreparationButton({ index }: { readonly index: number }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const titles = usePieceTitles();
  const next = withPreparation(content, index, titles);
  if (next === content) return null;
  return (
    <div className="stack tight">
      <p>
        <button type="button" className="button" onClick={() => change([], next)}>
          + {library.prepare}
        </button>
      </p>
      <p className="soft small">{library.prepareHow}</p>
    </div>
  );
}

function MeltFields({ path, index, around }: PartFieldsProps & { readonly index: number }): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const titles = usePieceTitles();
  const isCast = valueAt(content, [...path, 'mould']) !== undefined;
  return (
    <>
      <div className="fields">
        <Material path={path} around={around} none={library.meltBase} />
        <MouldFields
          path={path}
          around={around}
          onChosen={(mould) => change([], withMeltMould(content, index, mould, titles))}
        />
      </div>
      <AmountFields path={path} ways={isCast ? 'all' : 'open'} />
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
