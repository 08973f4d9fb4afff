import { useMutation } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useSettingsWords } from './settings-words.js';
import { answered, api } from '../api/client.js';
import { useLogQueue } from '../offline/use-log-queue.js';
import { forgetSession } from '../session/session.js';
import { Confirm } from '../shell/confirm.js';
import { Failed } from '../shell/states.js';
import { useWords } from '../words/words.js';

/** Ends the key of this device. */
export function SignOut(): ReactNode {
  const { shell } = useWords();
  const settings = useSettingsWords();
  const waiting = useLogQueue().length;
  const leave = useMutation({
    mutationFn: () => answered(api.DELETE('/api/session')),
    // Nothing of the bench may stay in the memory of a page whose reader has left.
    onSuccess: () => {
      forgetSession();
      location.assign('/');
    },
  });
  return (
    <>
      <p className="soft small">{settings.signOutHow}</p>
      {waiting > 0 && <p className="note amber">{shell.waiting(waiting)}</p>}
      <div>
        <Confirm
          label={settings.signOut}
          ask={settings.signOutAsk}
          yes={settings.signOutYes}
          no={settings.stay}
          busy={leave.isPending}
          onYes={() => leave.mutate()}
        />
      </div>
      {leave.error !== null && <Failed error={leave.error} again={() => leave.reset()} />}
    </>
  );
}
