import { Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import { useWords } from '../words/words.js';
import { fieldId, useForm } from './form-context.js';
import { listAt, withItem, withoutItem, type Path, type Value } from './values.js';

/** A list of small groups of fields, with a way to add one and to take one out. */
export function ListEditor({
  path,
  title,
  add,
  make,
  most = 100,
  children,
}: {
  readonly path: Path;
  readonly title: string;
  /** What the button says; absent: “Add”. */
  readonly add?: string;
  readonly make: () => Value;
  readonly most?: number;
  readonly children: (path: Path, index: number) => ReactNode;
}): ReactNode {
  const { form } = useWords();
  const { content, change } = useForm();
  const items = listAt(content, path);
  return (
    <fieldset className="stack tight" id={fieldId(path)} tabIndex={-1}>
      <legend>{title}</legend>
      {items.map((_, i) => (
        <div key={i} className="list-item">
          <div>{children([...path, i], i)}</div>
          <button
            type="button"
            className="icon-button"
            aria-label={`${form.remove}: ${title} ${String(i + 1)}`}
            onClick={() => change([], withoutItem(content, path, i))}
          >
            <Trash2 size={20} aria-hidden />
          </button>
        </div>
      ))}
      {items.length < most && (
        <p>
          <button
            type="button"
            className="button plain"
            onClick={() => change([], withItem(content, path, make()))}
          >
            + {add ?? form.add}
          </button>
        </p>
      )}
    </fieldset>
  );
}
