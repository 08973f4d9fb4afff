import { useMutation, useQueryClient, type UseMutationResult } from '@tanstack/react-query';
import type { LogEntry } from '#contract';
import { pathText, type Issue } from '#units';
import type { Texts } from '#words';
import { useTexts } from '../look/use-texts.js';
import { ApiError } from '../api/client.js';
import type { ListedIssue } from '../form/path-of.js';
import { logEntry, type LogOutcome } from './log-queue.js';

/** What became of an entry that was not refused. */
export type Logged = Exclude<LogOutcome, { readonly status: 'refused' }>;

/**
 * Writes into the bench log of a run from a form that shows a refusal itself.
 * @param runId id of the run, not its key
 */
export function useLogEntry(runId: string): UseMutationResult<Logged, Error, LogEntry> {
  const queries = useQueryClient();
  const texts = useTexts();
  return useMutation({
    // The queue knows by itself whether there is a connection, and keeps what cannot be sent.
    networkMode: 'always',
    mutationFn: async (entry: LogEntry): Promise<Logged> => {
      const outcome = await logEntry(runId, entry, { ifRefused: 'hand-back' });
      if (outcome.status !== 'refused') return outcome;
      const { status, text, issues } = outcome.refusal;
      throw new ApiError(status, {
        type: 'about:blank',
        title: text,
        status,
        issues: issues.map((issue) => listed(issue, texts)),
      });
    },
    // What else it may have changed is brought up to date behind every page, for entries sent later too.
    onSuccess: () => queries.invalidateQueries({ queryKey: ['cure', runId] }),
  });
}

/** An issue as the API lists it. */
function listed(issue: Issue, texts: Texts): ListedIssue {
  const { code, path, value, ...data } = issue;
  const field = texts.fieldName(path);
  return {
    code,
    path: pathText(path),
    ...(field !== undefined && { field }),
    message: texts.issue(issue),
    value,
    data,
  };
}
