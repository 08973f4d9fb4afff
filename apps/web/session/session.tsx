import { queryOptions, useQuery, useQueryClient } from '@tanstack/react-query';
import { createContext, use, type ReactNode } from 'react';
import { answered, api, ApiError, type Schemas } from '../api/client.js';
import { usePreference } from '../preferences/preferences.js';
import { Failed, Loading } from '../shell/states.js';
import { forShown } from '../preferences/shown-workshop.js';
import { SignIn } from './sign-in.js';

export type SessionFacts = Schemas['Session'];

const SessionContext = createContext<SessionFacts | null>(null);
/** What was known last time, so that a page can be read without a connection. */
const KEY = forShown('benchtide.session');

/** Who is signed in here. */
export const sessionQuery = queryOptions({ queryKey: ['session'], queryFn: whoAmI, staleTime: Infinity });

/** Lets in who is signed in; asks all others for their code. */
export function Session({ children }: { readonly children: ReactNode }): ReactNode {
  const queries = useQueryClient();
  const asked = useQuery(sessionQuery);
  const { data, error, failureReason, refetch } = asked;
  // The first failure is enough to go on with what was known; the next tries need not be waited for.
  const known =
    data ?? (failureReason !== null && !(failureReason instanceof ApiError) ? remembered() : null);
  if (known !== null) return <SessionContext value={known}>{children}</SessionContext>;
  if (error === null) return <Loading />;
  if (error instanceof ApiError && error.status === 401) {
    return <SignIn onDone={() => void queries.invalidateQueries()} />;
  }
  return <Failed error={error} again={() => void refetch()} />;
}

/** Whose bench this is. @throws where nobody is signed in */
export function useSession(): SessionFacts {
  const session = use(SessionContext);
  if (session === null) throw new Error('nobody is signed in here');
  return session;
}

/** The time zone in which this device shows times. */
export function useTimeZone(): string {
  const [chosen] = usePreference('timeZone');
  const { workshop } = useSession();
  return chosen === 'workshop' ? workshop.timeZone : chosen;
}

async function whoAmI(): Promise<SessionFacts> {
  const facts = await answered(api.GET('/api/session'));
  localStorage.setItem(KEY, JSON.stringify(facts));
  return facts;
}

/** Forgets whose bench this was: who signs out leaves nothing behind. */
export function forgetSession(): void {
  localStorage.removeItem(KEY);
}

function remembered(): SessionFacts | null {
  const text = localStorage.getItem(KEY);
  return text === null ? null : (JSON.parse(text) as SessionFacts);
}
