import { useMutation } from '@tanstack/react-query';
import { useRef, useState, type ReactNode } from 'react';
import { useSettingsWords } from './settings-words.js';
import { answered, api, type Schemas } from '../api/client.js';
import { useTimes } from '../look/times.js';
import { Failed } from '../shell/states.js';
import { addressesElsewhere } from './addresses-elsewhere.js';
import { copyText } from './copy-text.js';

/** Makes a code that lets one other device in, and shows it until the page is left. */
export function AddDevice(): ReactNode {
  const settings = useSettingsWords();
  const make = useMutation({ mutationFn: () => answered(api.POST('/api/session/codes')) });
  return (
    <div className="stack tight">
      <h3>{settings.add}</h3>
      <p className="soft small">{settings.addHow}</p>
      <p>
        <button type="button" className="button" disabled={make.isPending} onClick={() => make.mutate()}>
          {settings.add}
        </button>
      </p>
      <div role="status">{make.data !== undefined && <Made code={make.data} />}</div>
      {make.error !== null && <Failed error={make.error} again={() => make.mutate()} />}
    </div>
  );
}

function Made({
  code: { code, path, addresses, expiresAt },
}: {
  readonly code: Schemas['SignInCode'];
}): ReactNode {
  const settings = useSettingsWords();
  const times = useTimes();
  const [copied, setCopied] = useState<'no' | 'yes' | 'cannot'>('no');
  const shown = useRef<HTMLSpanElement>(null);
  const [address, ...others] = addressesElsewhere(location.origin, addresses);
  return (
    <div className="note stack tight">
      <p>{settings.codeHow(times.time(expiresAt))}</p>
      <p className="code numbers">{code}</p>
      {address === undefined ? (
        <p className="small">{settings.onlyHere}</p>
      ) : (
        <>
          <p className="small">
            {settings.link}:{' '}
            <span ref={shown} className="link-text">
              {`${address}${path}`}
            </span>
          </p>
          {others.length > 0 && <p className="small soft">{settings.otherAddresses(others.join(', '))}</p>}
          <p>
            <button
              type="button"
              className="button"
              onClick={() => {
                void copyText(shown.current!).then((isDone) => setCopied(isDone ? 'yes' : 'cannot'));
              }}
            >
              {copied === 'yes' ? settings.copied : settings.copy}
            </button>
          </p>
        </>
      )}
      {copied === 'cannot' && <p className="small">{settings.copyByHand}</p>}
    </div>
  );
}
