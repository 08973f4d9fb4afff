import { useMutation, useQueryClient, type UseMutationResult } from '@tanstack/react-query';
import { useNavigate } from 'react-router';
import type { PlanInput } from '#contract';
import { answered, api, type Schemas } from '../../api/client.js';
import { createThing } from '../../library/shelf-calls.js';
import { weekOf, type GuideContents, type GuideDraft } from './guide-draft.js';

/** A draft, and what it comes to. */
export interface GuideToSave {
  readonly draft: GuideDraft;
  readonly contents: GuideContents;
}

/**
 * Saves mould, recipe, design and hours, then the run, and goes to it. What was saved before a failure is not saved
 * again.
 * @param onMade after each of the things, with the draft as it then is
 */
export function useSaveGuide(
  input: PlanInput,
  onMade: (part: keyof GuideDraft['made'], key: string) => void,
  onSaved: () => void,
): UseMutationResult<Schemas['CreatedRun'], Error, GuideToSave> {
  const queries = useQueryClient();
  const navigate = useNavigate();
  return useMutation({
    mutationFn: async ({ draft, contents }: GuideToSave) => {
      for (const part of ['mould', 'recipe', 'design'] as const) {
        if (draft.made[part] !== undefined) continue;
        await createThing(`${part}s`, contents[part], draft.once[part]);
        onMade(part, contents[part].key);
      }
      if (Object.keys(draft.days).length > 0) {
        const { version, facts } = await answered(api.GET('/api/workshop'));
        const weekly = weekOf(draft, input.workshop.hours.weekly);
        const body = { version, facts: { ...facts, hours: { ...facts.hours, weekly } } };
        await answered(api.PUT('/api/workshop', { body }));
      }
      // The order is part of the name: another start is another run.
      const key = `${draft.once.run}-${contents.order.startAfter}-${String(contents.order.count)}`;
      const params = { header: { 'Idempotency-Key': key } };
      return answered(api.POST('/api/runs', { body: contents.order, params }));
    },
    onSuccess: async ({ run }) => {
      onSaved();
      await navigate(`/runs/${run.id}`);
    },
    onSettled: () => queries.invalidateQueries(),
  });
}
