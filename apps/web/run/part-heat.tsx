import type { ReactNode } from 'react';
import { PartHeatOf } from '../library/heat/part-heat-of.js';
import { useClocks } from './use-run.js';

/** The heat of a part of a run, with its curve, from all clocks of the run. */
export default function PartHeat({ run, part }: { readonly run: string; readonly part: string }): ReactNode {
  const { data } = useClocks(run);
  return <PartHeatOf part={part} all={data?.runs[0]?.parts ?? []} />;
}
