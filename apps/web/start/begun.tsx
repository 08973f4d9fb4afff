import { lazy, Suspense, type ReactNode } from 'react';
import { Loading } from '../shell/states.js';
import { useSession } from '../session/session.js';

const Start = lazy(() => import('./start-page.js'));

/** Asks how to begin, until the maker has chosen; the demo needs no such choice. */
export function Begun({ children }: { readonly children: ReactNode }): ReactNode {
  const { workshop } = useSession();
  if (workshop.begun || workshop.isDemo) return children;
  return (
    <Suspense fallback={<Loading />}>
      <Start />
    </Suspense>
  );
}
