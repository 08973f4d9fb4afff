import { useMemo } from 'react';
import { useForm } from '../../form/form-context.js';
import { useTimes } from '../../look/times.js';
import { useWords } from '../../words/words.js';
import { stageConditions, type StageConditions } from './stage-conditions.js';

/** Conditions of each stage of the design that is edited, by its key. */
export function useStageConditions(): ReadonlyMap<string, StageConditions> {
  const { library } = useWords();
  const { length } = useTimes();
  const { content } = useForm();
  return useMemo(() => stageConditions(content, library, { length }), [content, library, length]);
}
