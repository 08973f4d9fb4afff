import type { ReactNode } from 'react';
import type { PlanDocument, PlanInput } from '#contract';
import type { Issue } from '#units';
import { SelectField, TextField } from '../../form/fields.js';
import { FormContext } from '../../form/form-context.js';
import { MeasureField, NumberField } from '../../form/number-field.js';
import { withValue, type Group } from '../../form/values.js';
import { FatsEditor } from '../../library/recipe/fats-editor.js';
import { useAmounts } from '../../look/amounts.js';
import { useTimes } from '../../look/times.js';
import { useWords } from '../../words/words.js';
import { Slider } from '../slider.js';
import { presets } from './guide-draft.js';

interface Props {
  readonly content: Group;
  readonly issues: readonly Issue[];
  /** What comes of it, as far as that is known. */
  readonly plan: PlanDocument | undefined;
  readonly onChange: (content: Group) => void;
}

function Fields({
  content,
  issues,
  onChange,
  children,
}: Props & { readonly children: ReactNode }): ReactNode {
  const change = (path: Parameters<typeof withValue>[1], value: Parameters<typeof withValue>[2]): void =>
    onChange(withValue(content, path, value) as Group);
  return <FormContext value={{ content, change, issues }}>{children}</FormContext>;
}

/** A mould by the water that fills it. */
export function MouldStep({
  perCavity,
  onPerCavity,
  ...props
}: Props & { readonly perCavity: number; readonly onPerCavity: (pieces: number) => void }): ReactNode {
  const { guide } = useWords().plan;
  const amounts = useAmounts();
  const [part] = props.plan?.runs[0]?.amounts ?? [];
  const each = part?.perPiece === undefined ? undefined : part.perPiece.meanMl * perCavity;
  const { cavities } = props.content;
  return (
    <Fields {...props}>
      <p>{guide.mouldHow}</p>
      <TextField path={['title']} label={guide.mouldTitle} />
      <SelectField
        path={['kind']}
        label={guide.mouldKind}
        choices={Object.entries(guide.kinds).map(([value, text]) => ({ value, text }))}
      />
      <MeasureField path={['waterFillG']} dimension="mass" label={guide.waterFill} />
      <NumberField path={['cavities']} label={guide.cavities} />
      <Slider
        label={guide.perCavity}
        value={perCavity}
        text={amounts.number(perCavity)}
        low={1}
        high={30}
        step={1}
        hint={<p className="soft small">{guide.perCavityHint}</p>}
        onChange={onPerCavity}
      />
      <p className="note numbers live">
        {each !== undefined && typeof cavities === 'number'
          ? guide.holds(amounts.volume(each), amounts.volume(each * cavities))
          : '…'}
      </p>
    </Fields>
  );
}

/** Fats, lye and water; what they come to in all cavities. */
export function RecipeStep({ input, ...props }: Props & { readonly input: PlanInput }): ReactNode {
  const { plan: words } = useWords();
  const { guide } = words;
  const amounts = useAmounts();
  const times = useTimes();
  const { content, onChange } = props;
  const set = (name: string, value: number): void => onChange({ ...content, [name]: value });
  const number = (name: string, preset: number): number => {
    const value = content[name];
    return typeof value === 'number' ? value : preset;
  };
  const lye = number('lyeConcentrationPercent', 33);
  const superfat = number('superfatPercent', 5);
  const run = props.plan?.runs[0];
  const batch = run?.amounts[0]?.batch;
  const firm = run?.clocks.find(({ state }) => state === 'firm')?.band;
  return (
    <Fields {...props}>
      <TextField path={['title']} label={guide.recipeTitle} />
      <fieldset className="stack tight">
        <legend>{guide.preset}</legend>
        <div className="row">
          {(Object.keys(presets) as (keyof typeof presets)[]).map((name) => (
            <button
              key={name}
              type="button"
              className="button"
              onClick={() => onChange({ ...content, fats: [...presets[name]] })}
            >
              {guide.presets[name]}
            </button>
          ))}
        </div>
        <p className="soft small">{guide.presetNote}</p>
      </fieldset>
      <FatsEditor own={input.fats} />
      <Slider
        label={words.water}
        value={lye}
        text={words.lyeOf(amounts.percent(lye))}
        {...{ low: 25, high: 40, step: 0.5 }}
        ends={[words.moreWater, words.lessWater]}
        onChange={(value) => set('lyeConcentrationPercent', value)}
      />
      <Slider
        label={guide.superfat}
        value={superfat}
        text={amounts.percent(superfat)}
        {...{ low: 2, high: 10, step: 0.5 }}
        onChange={(value) => set('superfatPercent', value)}
      />
      <div className="note stack tight numbers live">
        <p>
          {batch === undefined
            ? '…'
            : guide.weigh(
                amounts.mass(batch.fatsG),
                amounts.mass(batch.naohG + batch.kohG),
                amounts.mass(batch.waterG),
              )}
        </p>
        {firm !== undefined && (
          <p>{guide.firm(times.length(firm.likely), times.length(firm.low), times.length(firm.high))}</p>
        )}
      </div>
      <p className="note coral">{guide.lyeCaution}</p>
    </Fields>
  );
}
