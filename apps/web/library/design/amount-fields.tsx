import type { ReactNode } from 'react';
import { amountWays, type AmountWay } from '#contract/names';
import { useField, useForm } from '../../form/form-context.js';
import { MeasureField, NumberField } from '../../form/number-field.js';
import { valueAt, withValue, type Path, type Value } from '../../form/values.js';
import { useWords } from '../../words/words.js';

/** `ml` is the bare figure. */
type Way = 'ml' | AmountWay;
const offeredWays: readonly Way[] = ['ml', ...amountWays];

/** How much of a part one piece takes, in one of the ways to say so. */
export function AmountFields({
  path,
  ways,
}: {
  readonly path: Path;
  /** `open`: it is never cast, so no cavity can say it. */
  readonly ways: 'all' | 'open';
}): ReactNode {
  const { library } = useWords();
  const { content, change } = useForm();
  const { id, wrong } = useField([...path, 'amount']);
  const way = wayOf(valueAt(content, path));
  const offered = offeredWays.filter((each) => ways === 'all' || each !== 'cavity' || way === 'cavity');
  const turn = (next: Way): void => {
    const bare = withValue(
      withValue(content, [...path, 'amount'], undefined),
      [...path, 'perPieceMl'],
      undefined,
    );
    change([], next === 'ml' ? bare : withValue(bare, [...path, 'amount'], { by: next, ...begun[next] }));
  };
  return (
    <fieldset className="stack tight" id={id} tabIndex={-1}>
      <legend>{library.amountPerPiece}</legend>
      <div className="field">
        <label htmlFor={`way-${path.join('-')}`} className="visually-hidden">
          {library.amountBy}
        </label>
        <select id={`way-${path.join('-')}`} value={way} onChange={({ target }) => turn(target.value as Way)}>
          {offered.map((each) => (
            <option key={each} value={each}>
              {library.amountWays[each]}
            </option>
          ))}
        </select>
      </div>
      <div className="fields">
        <WayFields way={way} path={path} />
      </div>
      {wrong.length > 0 && <p className="wrong small">{wrong.join(' ')}</p>}
    </fieldset>
  );
}

const begun: Partial<Readonly<Record<Way, { readonly [field: string]: Value }>>> = {
  cavity: { fillPercent: 100 },
};

function wayOf(part: Value): Way {
  const by = valueAt(part, ['amount', 'by']);
  return typeof by === 'string' ? (by as Way) : 'ml';
}

function WayFields({ way, path }: { readonly way: Way; readonly path: Path }): ReactNode {
  const { library } = useWords();
  const amount = [...path, 'amount'];
  switch (way) {
    case 'ml':
      return <MeasureField path={[...path, 'perPieceMl']} label={library.onePiece} dimension="volume" />;
    case 'cavity':
      return (
        <NumberField path={[...amount, 'fillPercent']} label={library.fillShare} unit="%" preset={100} />
      );
    case 'finished':
      return (
        <>
          <MeasureField path={[...amount, 'ml']} label={library.finishedVolume} dimension="volume" />
          <NumberField path={[...amount, 'shrinkagePercent']} label={library.shrinkage} unit="%" />
        </>
      );
    case 'coat':
      return (
        <>
          <MeasureField path={[...amount, 'areaCm2']} label={library.coatArea} dimension="area" />
          <MeasureField path={[...amount, 'thicknessMm']} label={library.coatThickness} dimension="length" />
        </>
      );
    case 'bead':
      return (
        <>
          <MeasureField path={[...amount, 'lengthMm']} label={library.beadLength} dimension="length" />
          <MeasureField path={[...amount, 'widthMm']} label={library.beadWidth} dimension="length" />
        </>
      );
    case 'bead-section':
      return (
        <>
          <MeasureField path={[...amount, 'lengthMm']} label={library.beadLength} dimension="length" />
          <MeasureField path={[...amount, 'sectionMm2']} label={library.beadSection} dimension="section" />
        </>
      );
    case 'weighing':
      return (
        <>
          <NumberField path={[...amount, 'pieces']} label={library.weighedPieces} />
          <MeasureField path={[...amount, 'grams']} label={library.weighedGrams} dimension="mass" />
        </>
      );
  }
}
