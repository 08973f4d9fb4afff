import type { ReactNode } from 'react';
import { useSession } from '../session/session.js';
import { useOpenDemo, useRemoveDemo } from '../start/use-demo.js';
import { Confirm } from '../shell/confirm.js';
import { Failed } from '../shell/states.js';
import { useWords } from '../words/words.js';

/** The way to the demo, and out of the world with it; in the demo itself every page has both. */
export function Demo(): ReactNode {
  const { shell, start } = useWords();
  const { workshop, demo } = useSession();
  const open = useOpenDemo();
  const remove = useRemoveDemo();
  if (workshop.isDemo) return null;
  const error = open.error ?? remove.error;
  return (
    <section className="card stack tight" aria-labelledby="demo">
      <h2 id="demo">{start.demo.title}</h2>
      <p className="soft small">{start.demo.text}</p>
      <div className="row">
        <button type="button" className="button" disabled={open.isPending} onClick={() => open.mutate()}>
          {start.demo.go}
        </button>
        {demo !== null && (
          <Confirm
            label={shell.demo.remove}
            ask={shell.demo.ask}
            yes={shell.demo.yes}
            no={shell.demo.no}
            className="button plain"
            busy={remove.isPending}
            onYes={() => remove.mutate()}
          />
        )}
      </div>
      <p role="status">{open.isPending && start.demo.making}</p>
      {error !== null && <Failed error={error} again={() => (open.reset(), remove.reset())} />}
    </section>
  );
}
