import { useEffect, useRef, useState, type ReactNode } from 'react';
import { answered, api, ApiError } from '../api/client.js';
import { useWords } from '../words/words.js';
import { deviceName } from './device-name.js';
import './sign-in.css';

/** Asks for the code that the terminal shows; takes it from the link where that was followed. */
export function SignIn({ onDone }: { readonly onDone: () => void }): ReactNode {
  const { session } = useWords();
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const isTried = useRef(false);
  const enter = async (secret: string): Promise<void> => {
    setProblem(null);
    // A key is much longer than a code.
    const body = secret.length >= 20 ? { key: secret } : { code: secret };
    try {
      await answered(
        api.POST('/api/session', {
          body: { ...body, device: deviceName(navigator.userAgent, session.devices) },
        }),
      );
      onDone();
    } catch (error) {
      if (!(error instanceof ApiError)) setProblem(String(error));
      else setProblem(error.status === 429 ? session.tooMany : session.wrong);
    }
  };
  useEffect(() => {
    const code = /^#sign-in=([\w-]+)$/.exec(location.hash)?.[1];
    if (code === undefined || isTried.current) return;
    isTried.current = true;
    history.replaceState(null, '', location.pathname);
    void enter(code);
  });
  return (
    <main className="sign-in">
      <form
        className="card stack"
        onSubmit={(event) => {
          event.preventDefault();
          void enter(text.trim());
        }}
      >
        <img src="/icon.svg" alt="" width="56" height="56" />
        <h1>{session.title}</h1>
        <p>{session.how}</p>
        <div className="field">
          <label htmlFor="code">{session.code}</label>
          <input
            id="code"
            value={text}
            onChange={(event) => setText(event.target.value)}
            autoComplete="one-time-code"
            autoCapitalize="characters"
            spellCheck={false}
            required
            aria-describedby="code-problem"
          />
          <p id="code-problem" className="wrong" role="alert">
            {problem}
          </p>
        </div>
        <button type="submit" className="button main">
          {session.enter}
        </button>
      </form>
    </main>
  );
}
