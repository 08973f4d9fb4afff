import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useNavigate } from 'react-router';
import { answered, api } from '../api/client.js';
import { LanguageChoice } from '../form/language-choice.js';
import { preferences } from '../preferences/preferences.js';
import { Failed } from '../shell/states.js';
import { useWords } from '../words/words.js';
import './start.css';
import { useOpenDemo } from './use-demo.js';

/** The first thing that a new workshop asks: begin with it, or look round the demo first. */
export default function StartPage(): ReactNode {
  const { start } = useWords();
  const begin = useBegin(start.workshop);
  const demo = useOpenDemo();
  const isBusy = begin.isPending || demo.isPending;
  return (
    <main className="start stack">
      <header className="stack tight">
        <h1>{start.title}</h1>
        <p>{start.lead}</p>
      </header>
      <div className="columns">
        <section className="card stack" aria-labelledby="own">
          <h2 id="own">{start.own.title}</h2>
          <p>{start.own.text}</p>
          <p>
            <button type="button" className="button main" disabled={isBusy} onClick={() => begin.mutate()}>
              {start.own.go}
            </button>
          </p>
        </section>
        <section className="card stack" aria-labelledby="demo">
          <h2 id="demo">{start.demo.title}</h2>
          <p>{start.demo.text}</p>
          <p>
            <button type="button" className="button" disabled={isBusy} onClick={() => demo.mutate()}>
              {start.demo.go}
            </button>
          </p>
        </section>
      </div>
      <p role="status">{isBusy && (demo.isPending ? start.demo.making : start.own.making)}</p>
      {begin.error !== null && <Failed error={begin.error} again={() => begin.mutate()} />}
      {demo.error !== null && <Failed error={demo.error} again={() => demo.mutate()} />}
      <LanguageChoice />
    </main>
  );
}

/** Begins with the maker's own workshop: in the time zone, language and units of this device. */
function useBegin(title: string) {
  const queries = useQueryClient();
  const navigate = useNavigate();
  return useMutation({
    mutationFn: async () => {
      const { version, facts } = await answered(api.GET('/api/workshop'));
      const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
      const { language, units } = preferences();
      const body = { version, facts: { ...facts, title, timeZone, language, units } };
      await answered(api.PUT('/api/workshop', { body }));
    },
    onSuccess: async () => {
      await navigate('/guide');
      await queries.invalidateQueries();
    },
  });
}
