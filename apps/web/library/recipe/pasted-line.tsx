import type { ReactNode } from 'react';
import { useAmounts } from '../../look/amounts.js';
import { useWords } from '../../words/words.js';
import type { LineOutcome, ReadLine, TextAmount } from './read-pasted.js';
import { usePastingWords } from './pasting-words.js';

/** One line of a pasted recipe, and what became of it. */
export function PastedLine({
  read: { line, text, outcome },
  titleOf,
  onChoose,
}: {
  readonly read: ReadLine;
  readonly titleOf: (key: string) => string;
  readonly onChoose: (fat: string) => void;
}): ReactNode {
  const pasting = usePastingWords();
  const said = useSaid(titleOf);
  const choices = choicesOf(outcome);
  const isTaken = outcome.kind === 'fat' || outcome.kind === 'liquid' || outcome.kind === 'addition';
  return (
    <li className={isTaken ? 'taken' : undefined}>
      <p className="soft small written" translate="no">
        <span className="visually-hidden">{pasting.line(line)}: </span>
        {text}
      </p>
      {said(outcome).map((sentence, i) => (
        <p key={sentence} className={isTaken && i === 0 ? 'numbers' : 'small'}>
          {isTaken && i === 0 && <span aria-hidden>✓ </span>}
          {sentence}
        </p>
      ))}
      {choices.length > 0 && (
        <p className="row small">
          <span>{isTaken ? pasting.orIs : pasting.isIt}</span>
          {choices.map((key) => (
            <button key={key} type="button" className="button plain" onClick={() => onChoose(key)}>
              {titleOf(key)}
            </button>
          ))}
        </p>
      )}
    </li>
  );
}

function choicesOf(outcome: LineOutcome): readonly string[] {
  if (outcome.kind === 'fat') return outcome.others.slice(0, 6);
  return outcome.kind === 'unknown-fat' ? outcome.nearest : [];
}

function useSaid(titleOf: (key: string) => string): (outcome: LineOutcome) => string[] {
  const { library } = useWords();
  const pasting = usePastingWords();
  const { mass, percent } = useAmounts();
  const amountText = (amount: TextAmount): string =>
    'grams' in amount ? mass(amount.grams) : percent(amount.percent, 2);
  return (outcome) => {
    switch (outcome.kind) {
      case 'fat':
        return [
          pasting.taken(titleOf(outcome.fat), amountText(outcome.amount)),
          ...outcome.doubts.map((doubt) => pasting.doubts[doubt]),
        ];
      case 'liquid':
        return [pasting.taken(titleOf(outcome.liquid), amountText(outcome.amount))];
      case 'addition':
        return [pasting.taken(library.additionKinds[outcome.addition], amountText(outcome.amount))];
      case 'no-amount':
        return [pasting.noAmount[outcome.why](titleOf(outcome.fat))];
      case 'not-a-fat':
        return [pasting.others[outcome.what]];
      default:
        return [pasting.outcomes[outcome.kind]];
    }
  };
}
