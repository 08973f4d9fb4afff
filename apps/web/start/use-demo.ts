import { useMutation, type UseMutationResult } from '@tanstack/react-query';
import { answered, api } from '../api/client.js';
import { showWorkshop } from '../preferences/shown-workshop.js';

/** Makes the demo if it is not there, and goes to it. */
export function useOpenDemo(): UseMutationResult<void, Error, void> {
  return useMutation({
    mutationFn: async () => showWorkshop((await answered(api.POST('/api/demo'))).id),
  });
}

/** Throws the demo away, and goes to the maker's own workshop. */
export function useRemoveDemo(): UseMutationResult<void, Error, void> {
  return useMutation({
    mutationFn: async () => {
      await answered(api.DELETE('/api/demo'));
      showWorkshop(null);
    },
  });
}
