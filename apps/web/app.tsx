import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { lazy, Suspense, type ReactNode } from 'react';
import { BrowserRouter, Route, Routes } from 'react-router';
import { ApiError } from './api/client.js';
import { Session } from './session/session.js';
import { Frame } from './shell/frame.js';
import { Loading, NothingHere } from './shell/states.js';
import { WordsProvider } from './words-provider.js';

const Now = lazy(() => import('./now/now-page.js'));
const Runs = lazy(() => import('./run/runs-page.js'));
const Run = lazy(() => import('./run/run-page.js'));
const Plan = lazy(() => import('./plan/plan-page.js'));
const Makings = lazy(() => import('./library/makings-page.js'));
const Shelf = lazy(() => import('./shelf/shelf-page.js'));
const Hours = lazy(() => import('./hours/hours-page.js'));
const Lessons = lazy(() => import('./lessons/lessons-page.js'));
const Settings = lazy(() => import('./settings/settings-page.js'));
const Background = lazy(() => import('./background.js'));

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

export function App(): ReactNode {
  return (
    <QueryClientProvider client={queries}>
      <WordsProvider>
        <BrowserRouter>
          <Session>
            <Frame>
              <Suspense fallback={<Loading />}>
                <Routes>
                  <Route path="/" element={<Now />} />
                  <Route path="/runs" element={<Runs />} />
                  <Route path="/runs/:id/*" element={<Run />} />
                  <Route path="/plan" element={<Plan />} />
                  <Route path="/makings/*" element={<Makings />} />
                  <Route path="/shelf" element={<Shelf />} />
                  <Route path="/hours" element={<Hours />} />
                  <Route path="/lessons" element={<Lessons />} />
                  <Route path="/settings" element={<Settings />} />
                  <Route path="*" element={<NothingHere />} />
                </Routes>
              </Suspense>
            </Frame>
            <Suspense>
              <Background />
            </Suspense>
          </Session>
        </BrowserRouter>
      </WordsProvider>
    </QueryClientProvider>
  );
}
