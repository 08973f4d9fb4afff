import { Check, Plus, TriangleAlert, X } from 'lucide-react';
import { useId, type ReactNode } from 'react';
import type { PieceDesign } from '#contract';
import { useWords } from '../words/words.js';
import { MOST_GROUPS, piecesOf, sumOf, twoGroups, type DraftGroup } from './draft-groups.js';

/** Whether all pieces are alike, or part ways: twelve coated, twelve piped. */
export function Groups({
  design,
  count,
  groups,
  onChange,
  onCount,
}: {
  readonly design: PieceDesign;
  /** Of the run. */
  readonly count: number;
  /** null: all pieces are alike. */
  readonly groups: readonly DraftGroup[] | null;
  readonly onChange: (groups: readonly DraftGroup[] | null) => void;
  readonly onCount: (count: number) => void;
}): ReactNode {
  const { groups: words } = useWords().plan;
  const parts = design.parts.map(({ key }) => key);
  const put = (i: number, change: Partial<DraftGroup>): void =>
    onChange(groups?.map((group, at) => (at === i ? { ...group, ...change } : group)) ?? null);
  const choose = { alike: null, parted: groups ?? twoGroups(count, parts) };
  return (
    <fieldset className="stack">
      <legend>{words.title}</legend>
      <div className="choices">
        {(['alike', 'parted'] as const).map((each) => (
          <label key={each}>
            <input
              type="radio"
              name="groups"
              checked={(each === 'parted') === (groups !== null)}
              onChange={() => onChange(choose[each])}
            />
            <span>{words[each]}</span>
          </label>
        ))}
      </div>
      {groups !== null && (
        <>
          <p className="soft small">{words.how}</p>
          {groups.map((group, i) => (
            <GroupFields
              key={i}
              number={i + 1}
              group={group}
              design={design}
              onChange={(change) => put(i, change)}
              onRemove={groups.length > 1 ? () => onChange(groups.filter((_, at) => at !== i)) : undefined}
            />
          ))}
          <Sum groups={groups} count={count} onCount={onCount} />
          <NotMade groups={groups} design={design} />
          {groups.length < MOST_GROUPS && (
            <p>
              <button
                type="button"
                className="button"
                onClick={() =>
                  onChange([
                    ...groups,
                    {
                      title: '',
                      count: String(Math.max(1, count - sumOf(groups))),
                      parts,
                    },
                  ])
                }
              >
                <Plus size={18} aria-hidden /> {words.add}
              </button>
            </p>
          )}
        </>
      )}
    </fieldset>
  );
}

function GroupFields({
  number,
  group,
  design,
  onChange,
  onRemove,
}: {
  readonly number: number;
  readonly group: DraftGroup;
  readonly design: PieceDesign;
  readonly onChange: (change: Partial<DraftGroup>) => void;
  /** Absent: it is the only one. */
  readonly onRemove: (() => void) | undefined;
}): ReactNode {
  const { groups: words } = useWords().plan;
  const id = useId();
  const isWrong = piecesOf(group) === undefined;
  const name = group.title.trim() === '' ? words.name(number) : group.title;
  return (
    <div className="card stack tight" role="group" aria-label={name}>
      <div className="group-head">
        <div className="field">
          <label htmlFor={`${id}-title`}>{words.groupTitle}</label>
          <input
            id={`${id}-title`}
            value={group.title}
            placeholder={words.name(number)}
            maxLength={120}
            onChange={({ target }) => onChange({ title: target.value })}
          />
        </div>
        <div className="field">
          <label htmlFor={`${id}-count`}>{words.pieces}</label>
          <input
            id={`${id}-count`}
            inputMode="numeric"
            value={group.count}
            maxLength={5}
            aria-invalid={isWrong}
            aria-describedby={isWrong ? `${id}-wrong` : undefined}
            onChange={({ target }) => onChange({ count: target.value })}
          />
        </div>
      </div>
      {isWrong && (
        <p id={`${id}-wrong`} className="wrong small">
          {words.badPieces}
        </p>
      )}
      <fieldset className="stack tight group-parts">
        <legend>{words.parts}</legend>
        <div className="choices">
          {design.parts.map((part) => (
            <label key={part.key}>
              <input
                type="checkbox"
                checked={group.parts.includes(part.key)}
                onChange={({ target }) =>
                  onChange({
                    parts: design.parts
                      .map(({ key }) => key)
                      .filter((key) => (key === part.key ? target.checked : group.parts.includes(key))),
                  })
                }
              />
              <span>{part.title}</span>
            </label>
          ))}
        </div>
      </fieldset>
      {group.parts.length === 0 && <p className="wrong small">{words.noParts}</p>}
      {onRemove !== undefined && (
        <p>
          <button type="button" className="button plain" onClick={onRemove}>
            <X size={18} aria-hidden /> {words.remove(name)}
          </button>
        </p>
      )}
    </div>
  );
}

/** Whether the groups come to all pieces, and the quickest way there where they do not. */
function Sum({
  groups,
  count,
  onCount,
}: {
  readonly groups: readonly DraftGroup[];
  readonly count: number;
  readonly onCount: (count: number) => void;
}): ReactNode {
  const { groups: words } = useWords().plan;
  const sum = sumOf(groups);
  const fits = sum === count;
  return (
    <>
      <p className={fits ? 'group-sum' : 'group-sum lacking'} role="status">
        {fits ? <Check size={18} aria-hidden /> : <TriangleAlert size={18} aria-hidden />}{' '}
        <span>{fits ? words.fits(sum) : words.differs(sum, count)}</span>
      </p>
      {!fits && sum >= 1 && (
        <p>
          <button type="button" className="button" onClick={() => onCount(sum)}>
            {words.makeSo(sum)}
          </button>
        </p>
      )}
    </>
  );
}

function NotMade({
  groups,
  design,
}: {
  readonly groups: readonly DraftGroup[];
  readonly design: PieceDesign;
}): ReactNode {
  const { groups: words } = useWords().plan;
  const left = design.parts.filter(({ key }) => !groups.some(({ parts }) => parts.includes(key)));
  if (left.length === 0) return null;
  return <p className="note amber small">{words.notMade(left.map(({ title }) => title).join(', '))}</p>;
}
