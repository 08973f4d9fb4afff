import type { ReactNode } from 'react';
import type { LogEntry } from '#contract';
import { MishapForm } from '../run/mishap-form.js';
import { Dialog } from '../shell/dialog.js';
import { useWords } from '../words/words.js';
import type { BenchRun } from './bench-view.js';
import { planOf } from './sitting-facts.js';

/** At the bench: what went wrong, and what each answer to it would do. */
export default function MishapDialog({
  bench,
  part,
  onClose,
  onMishap,
}: {
  readonly bench: BenchRun;
  /** Of the stage at hand. */
  readonly part: string;
  readonly onClose: () => void;
  readonly onMishap: (entry: LogEntry) => void;
}): ReactNode {
  const { mishap: words } = useWords().run;
  const own = planOf(bench);
  return (
    <Dialog title={words.title} onClose={onClose}>
      {own !== undefined && (
        <MishapForm
          run={bench.run}
          document={bench.document}
          own={own}
          likely={part}
          onChoose={(entry) => {
            onMishap(entry);
            onClose();
          }}
        />
      )}
      <p>
        <button type="button" className="button" onClick={onClose}>
          {words.cancel}
        </button>
      </p>
    </Dialog>
  );
}
