import { QueryClientProvider, type QueryClient } from '@tanstack/react-query';
import { lazy, Suspense, type ReactNode } from 'react';
import { BrowserRouter, Route, Routes } from 'react-router';
import { Session } from './session/session.js';
import { Frame } from './shell/frame.js';
import { Loading, NothingHere } from './shell/states.js';
import { Begun } from './start/begun.js';
import { DemoBar } from './start/demo-bar.js';
import { WordsProvider } from './words-provider.js';
import type { Said } from './words/words.js';

const Now = lazy(() => import('./now/now-page.js'));
const Runs = lazy(() => import('./run/runs-page.js'));
const Run = lazy(() => import('./run/run-page.js'));
const Plan = lazy(() => import('./plan/plan-page.js'));
const Makings = lazy(() => import('./makings-page.js'));
const Shelf = lazy(() => import('./shelf/shelf-page.js'));
const Hours = lazy(() => import('./hours/hours-page.js'));
const Lessons = lazy(() => import('./lessons/lessons-page.js'));
const Settings = lazy(() => import('./settings/settings-page.js'));
const Background = lazy(() => import('./background.js'));

interface AppProps {
  /** What is said in the language that was chosen when the page was opened. */
  readonly words: Said;
  readonly queries: QueryClient;
}

export function App({ words, queries }: AppProps): ReactNode {
  return (
    <QueryClientProvider client={queries}>
      <WordsProvider first={words}>
        <BrowserRouter>
          <Session>
            <Begun>
              <Frame top={<DemoBar />}>
                <Suspense fallback={<Loading />}>
                  <Routes>
                    <Route path="/" element={<Now />} />
                    <Route path="/runs" element={<Runs />} />
                    <Route path="/runs/:id/*" element={<Run />} />
                    <Route path="/plan" element={<Plan />} />
                    <Route path="/guide" element={<Plan isGuide />} />
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
            </Begun>
          </Session>
        </BrowserRouter>
      </WordsProvider>
    </QueryClientProvider>
  );
}
