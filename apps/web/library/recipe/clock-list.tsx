import type { ReactNode } from 'react';
import type { Schemas } from '../../api/client.js';
import { useAmounts } from '../../look/amounts.js';
import { Sentence } from '../../look/sentence.js';
import { useTexts } from '../../look/use-texts.js';
import { useWords } from '../../words/words.js';
import { roughBand, roughLength } from '../../words/rough-length.js';
import { BandPicture } from './band-picture.js';
import { groupClocks } from './clock-groups.js';

type Clock = Schemas['ClockForecast'];

/** Every clock of the batch as a sentence and a picture, with its reasons behind it. */
export function ClockList({
  clocks,
}: {
  readonly clocks: Schemas['ClocksDocument']['runs'][number]['parts'][number] | undefined;
}): ReactNode {
  const { library } = useWords();
  if (clocks === undefined) return null;
  return (
    <section className="card stack" aria-labelledby="clocks">
      <div className="stack tight">
        <h2 id="clocks">{library.clocks}</h2>
        <p className="soft small">{library.clocksLead}</p>
      </div>
      <div className="clock-groups">
        {groupClocks(clocks.clocks).map(({ group, clocks: members }) => (
          <section key={group} className="stack tight">
            <h3>{library.clockGroups[group]}</h3>
            <ul className="clocks">
              {members.map((clock) => (
                <li key={clock.state}>
                  <ClockLine
                    clock={clock}
                    all={members}
                    moves={clocks.moves.filter(({ state }) => state === clock.state)}
                  />
                </li>
              ))}
            </ul>
          </section>
        ))}
      </div>
    </section>
  );
}

function ClockLine({
  clock,
  all,
  moves,
}: {
  readonly clock: Clock;
  readonly all: readonly Clock[];
  readonly moves: readonly Schemas['ClockMove'][];
}): ReactNode {
  const { library } = useWords();
  const { number } = useAmounts();
  const texts = useTexts();
  const { low, likely, high, unit } = roughBand(clock.band);
  const say = clock.closes ? library.closesAfter : library.opensAfter;
  const base = roughLength(clock.baseMin);
  return (
    <details className="clock">
      <summary>
        <span className="clock-text">
          <strong>{say(library.states[clock.state], library.length(likely, unit, number))}</strong>{' '}
          <span className="soft small numbers">
            {library.inEight(library.range(number(low), number(high), unit))}
          </span>
        </span>
        <BandPicture band={clock.band} of={all.map(({ band }) => band)} closes={clock.closes} />
      </summary>
      <div className="stack tight reasons">
        <p className="small">{library.base(library.length(base.value, base.unit, number))}</p>
        <ul>
          {clock.reasons.map((reason) => (
            <li key={reason.rule} className="small">
              <Sentence of={reason} />{' '}
              <strong className="numbers">{library.factor(number(reason.factor, 2))}</strong>.{' '}
              {texts.names.rules[reason.rule]}{' '}
              <span className="soft">({texts.names.evidence(reason.evidence)})</span>
            </li>
          ))}
        </ul>
        {clock.beyond.map((beyond) => (
          <p key={beyond.rule} className="note amber small">
            <Sentence of={beyond} />
          </p>
        ))}
        {moves.length > 0 && (
          <>
            <p className="small">
              <strong>{library.movesTitle}</strong>
            </p>
            <ul>
              {moves.slice(0, 3).map((move) => (
                <li key={`${move.input} ${String(move.to)}`} className="small">
                  <Sentence of={move} />
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
    </details>
  );
}
