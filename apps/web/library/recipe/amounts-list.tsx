import type { ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { useAmounts } from '../../look/amounts.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { SuperfatPicture } from './superfat-picture.js';
import { Sentence } from '../../look/sentence.js';

/** Less than scales show: what the rounding of shares leaves that come to all of the liquid. */
const LEAST_G = 0.005;

/** What to weigh: lye and water first and large, with the caution right there; then all the rest. */
export function AmountsList({
  amounts,
  cautions,
}: {
  readonly amounts: Schemas['PartAmounts'];
  readonly cautions: Schemas['BatchToMix']['cautions'];
}): ReactNode {
  const { library } = useWords();
  const { titled, odds } = useTexts();
  const { number, mass, percent, volume, ...rest } = useAmounts();
  const { batch, cover, lossG, lossFrom } = amounts;
  if (batch === undefined) return null;
  const { liquids = [] } = batch;
  // Lye is weighed to a tenth of a gram whatever its amount.
  const weighed = (grams: number): string => (rest.system === 'us' ? mass(grams) : `${number(grams, 1)} g`);
  const lines: readonly (readonly [string, number])[] = [
    ...batch.fats.map((each) => [titled(each.fat, each.title), each.massG] as const),
    ...batch.acids.map((each) => [titled(each.key, each.title), each.massG] as const),
    ...liquids
      .filter(({ addedTo }) => addedTo === 'batter')
      .map((each) => [library.intoBatter(titled(each.key, each.title)), each.massG] as const),
    [library.lactate, batch.sodiumLactateG],
    [library.salt, batch.saltG],
    [library.sugar, batch.sugarG],
    ...batch.fragrances.map((each) => [each.title, each.massG] as const),
    ...batch.additions.map((each) => [each.title, each.massG] as const),
  ];
  const { low, used, high } = batch.superfat;
  const plainG = batch.stock?.waterG ?? batch.waterG;
  const inLye = liquids.filter(({ addedTo }) => addedTo === 'lye');
  return (
    <>
      <dl className="lye-figures">
        {batch.stock !== undefined && (
          <Figure name={library.stock(percent(batch.stock.percent))} text={weighed(batch.stock.massG)} />
        )}
        {batch.stock === undefined && batch.naohG > 0 && (
          <Figure name={library.naoh} text={weighed(batch.naohG)} />
        )}
        {batch.kohG > 0 && <Figure name={library.koh} text={weighed(batch.kohG)} />}
        {(inLye.length === 0 || plainG > LEAST_G) && (
          <Figure
            name={liquids.length === 0 ? library.waterNow : library.plainWater}
            text={weighed(plainG)}
          />
        )}
        {inLye.map(({ key, title, massG }) => (
          <Figure key={key} name={titled(key, title)} text={weighed(massG)} />
        ))}
      </dl>
      {cautions.map((caution) => (
        <p key={caution.code} className={caution.code === 'caution.lye' ? 'note coral small' : 'note small'}>
          <Sentence of={caution} />
        </p>
      ))}
      <p className="soft small">
        {library.views(
          percent(batch.water.lyeConcentrationPercent),
          number(batch.water.waterPerLye, 2),
          percent(batch.water.waterPercentOfFats),
        )}
      </p>
      <table className="weigh numbers">
        <tbody>
          {lines
            .filter(([, grams]) => grams > 0)
            .map(([title, grams]) => (
              <tr key={title}>
                <th scope="row">{title}</th>
                <td>{weighed(grams)}</td>
              </tr>
            ))}
          <tr className="total">
            <th scope="row">{library.together}</th>
            <td>
              {weighed(batch.batchG)}
              <br />
              <span className="soft small">{library.asVolume(volume(batch.batchMl))}</span>
            </td>
          </tr>
        </tbody>
      </table>
      <SuperfatPicture low={low} used={used} high={high} />
      <p className="small">
        {library.short(odds(cover.shortageChance))}{' '}
        {library.left(mass(cover.leftover.likely), mass(cover.leftover.low), mass(cover.leftover.high))}{' '}
        {lossFrom === 'usual' && lossG !== undefined && library.lossUsual(mass(lossG))}
      </p>
    </>
  );
}

function Figure({ name, text }: { readonly name: string; readonly text: string }): ReactNode {
  return (
    <div>
      <dt>{name}</dt>
      <dd className="numbers">{text}</dd>
    </div>
  );
}
