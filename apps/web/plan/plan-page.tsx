import { useQuery } from '@tanstack/react-query';
import { lazy, Suspense, type ReactNode } from 'react';
import { useSearchParams } from 'react-router';
import type { PlanInput } from '#contract';
import { answered, api } from '../api/client.js';
import { Failed, Loading } from '../shell/states.js';
import { PlanForm } from './plan-form.js';
import './plan.css';

const Guide = lazy(() => import('./guide/guide.js'));

/** Plan a run: from the designs there are, or step by step from nothing. @param isGuide step by step in any case */
export default function Page({ isGuide = false }: { readonly isGuide?: boolean }): ReactNode {
  const [search] = useSearchParams();
  const { data, error, refetch } = useQuery({
    queryKey: ['plan-input'],
    queryFn: async (): Promise<PlanInput> =>
      (await answered<unknown>(api.GET('/api/plan-input'))) as PlanInput,
    // A plan or an entry elsewhere changes what is busy; while this page is open it stays as it was read.
    refetchOnMount: 'always',
    refetchOnWindowFocus: false,
  });
  if (data === undefined) {
    return error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />;
  }
  if (isGuide || search.has('step') || data.designs.length === 0) {
    return (
      <Suspense fallback={<Loading />}>
        <Guide input={data} />
      </Suspense>
    );
  }
  return <PlanForm input={data} />;
}
