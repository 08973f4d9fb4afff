import '@fontsource-variable/figtree';
import '@fontsource-variable/literata';
import './look/tokens.css';
import './look/base.css';
import './look/pieces.css';
import './shell/shell.css';
import { QueryClient } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { ApiError } from './api/client.js';
import { App } from './app.js';
import { preferences } from './preferences/preferences.js';
import { sessionQuery } from './session/session.js';
import { loadWords } from './words/words.js';

/** A refusal will not change by asking again; a failure to reach the API may. */
const queries = new QueryClient({
  defaultOptions: {
    // Whether there is a connection is told by asking: the service worker answers without one too.
    mutations: { networkMode: 'always' },
    queries: {
      networkMode: 'always',
      staleTime: 30_000,
      retry: (failures, error) => !(error instanceof ApiError) && failures < 2,
    },
  },
});

const page = createRoot(document.getElementById('page')!);
// Both are on their way at once. The texts were asked for already, by `early-words.ts`.
queries.query(sessionQuery).catch(() => undefined);
const words = await loadWords(preferences().language);
page.render(
  <StrictMode>
    <App words={words} queries={queries} />
  </StrictMode>,
);
