import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useSettingsWords } from './settings-words.js';
import { answered, api, type Schemas } from '../api/client.js';
import { useWorkshop } from '../library/shelf-calls.js';
import { usePreference } from '../preferences/preferences.js';
import { Failed } from '../shell/states.js';

/** In which language and units nudges are written that leave the program, which knows no reader there but the workshop. */
export function NudgeLanguage(): ReactNode {
  const { data } = useWorkshop();
  return data === undefined ? null : <Written stored={data} />;
}

function Written({ stored }: { readonly stored: Schemas['StoredWorkshop'] }): ReactNode {
  const settings = useSettingsWords();
  const queries = useQueryClient();
  const [language] = usePreference('language');
  const [units] = usePreference('units');
  const { facts, version } = stored;
  const { mutate, isPending, error } = useMutation({
    mutationFn: () =>
      answered(api.PUT('/api/workshop', { body: { version, facts: { ...facts, language, units } } })),
    // After a refusal too: it may be that the facts were changed elsewhere.
    onSettled: () => queries.invalidateQueries({ queryKey: ['workshop'] }),
  });
  return (
    <div className="stack tight">
      <p>
        {settings.written(
          settings.languageNames[facts.language],
          facts.units === 'us' ? settings.usShort : settings.metricShort,
        )}
      </p>
      {(facts.language !== language || facts.units !== units) && (
        <p>
          <button type="button" className="button" disabled={isPending} onClick={() => mutate()}>
            {settings.writeLikeHere}
          </button>
        </p>
      )}
      {error !== null && <Failed error={error} again={() => mutate()} />}
    </div>
  );
}
