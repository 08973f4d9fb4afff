import { useId, useState, type ReactNode } from 'react';
import { pathText, type Issue } from '#units';
import { ApiError } from '../api/client.js';
import { FormContext } from '../form/form-context.js';
import { issuesOf } from '../form/path-of.js';
import { withValue, type Value } from '../form/values.js';
import { WrongList } from '../form/wrong-list.js';
import { Failed } from '../shell/states.js';
import { useStockWords } from './stock-words.js';
import { useWriteStock, type EntryNow, type Written } from './use-stock.js';

/**
 * A short form that writes one line into the ledger.
 * @param blank what the fields begin with, and have again once it is written
 * @param entryOf the entry that the fields tell; what is missing or unreadable the API names
 * @param fieldOf where an issue of the entry belongs among the fields; absent: where it is
 * @param said what is told once it is written
 */
export function EntryForm({
  label,
  blank,
  entryOf,
  fieldOf = (name) => name,
  said,
  button,
  onWritten,
  children,
}: {
  /** Of the form, for who cannot see it. */
  readonly label: string;
  readonly blank: Value;
  readonly entryOf: (content: Value) => EntryNow;
  readonly fieldOf?: (name: string) => string;
  readonly said: (entry: EntryNow) => string;
  readonly button: string;
  readonly onWritten?: (content: Value, became: Written) => void;
  readonly children: (content: Value, set: (content: Value) => void) => ReactNode;
}): ReactNode {
  const words = useStockWords();
  const [content, setContent] = useState<Value>(blank);
  const [tries, setTries] = useState(0);
  const [told, setTold] = useState('');
  const write = useWriteStock();
  const scope = useId();
  const issues = issuesIn(write.error, fieldOf);
  return (
    <FormContext
      value={{
        content,
        change: (path, value) => {
          setTold('');
          setContent((before: Value) => withValue(before, path, value));
        },
        issues,
        scope,
      }}
    >
      <form
        className="stack tight"
        noValidate
        aria-label={label}
        onSubmit={(event) => {
          event.preventDefault();
          const entry = entryOf(content);
          write.mutate(entry, {
            onSuccess: (became) => {
              onWritten?.(content, became);
              setTold(became === 'waiting' ? words.keptHere : said(entry));
              setContent(blank);
              setTries(0);
            },
            onError: () => setTries((before) => before + 1),
          });
        }}
      >
        {children(content, setContent)}
        {tries > 0 && <WrongList issues={issues} since={tries} />}
        {write.error !== null && issues.length === 0 && (
          <>
            <Failed error={write.error} again={() => write.reset()} />
            {!(write.error instanceof ApiError) && <p className="small">{words.needsConnection}</p>}
          </>
        )}
        <p>
          <button type="submit" className="button main" disabled={write.isPending}>
            {write.isPending ? words.entering : button}
          </button>
        </p>
        <p role="status">{told}</p>
      </form>
    </FormContext>
  );
}

function issuesIn(error: Error | null, fieldOf: (name: string) => string): Issue[] {
  const issues = issuesOf(error instanceof ApiError ? error.problem : undefined, ['entry']).map(
    ({ path: [name, ...rest], ...issue }): Issue => ({
      ...issue,
      path: typeof name === 'string' ? [fieldOf(name), ...rest] : [],
    }),
  );
  const first = new Map(issues.map((issue) => [pathText(issue.path), issue]));
  return [...first.values()];
}
