import type { ReactNode } from 'react';
import { useSession } from '../session/session.js';
import { showWorkshop } from '../preferences/shown-workshop.js';
import './demo-bar.css';
import { useRemoveDemo } from './use-demo.js';
import { useWords } from '../words/words.js';
import { Confirm } from '../shell/confirm.js';
import { Failed } from '../shell/states.js';

/** On every page of the demo: that it is one, and the ways out. Nothing elsewhere. */
export function DemoBar(): ReactNode {
  const { demo } = useWords().shell;
  const { workshop } = useSession();
  const remove = useRemoveDemo();
  if (!workshop.isDemo) return null;
  return (
    <aside className="demo-bar" aria-label={demo.label}>
      <div className="row">
        <p>
          <strong>{demo.label}.</strong> {demo.says}
        </p>
        <button type="button" className="button" onClick={() => showWorkshop(null)}>
          {demo.leave}
        </button>
        <Confirm
          label={demo.remove}
          ask={demo.ask}
          yes={demo.yes}
          no={demo.no}
          className="button plain"
          busy={remove.isPending}
          onYes={() => remove.mutate()}
        />
      </div>
      {remove.error !== null && <Failed error={remove.error} again={() => remove.mutate()} />}
    </aside>
  );
}
