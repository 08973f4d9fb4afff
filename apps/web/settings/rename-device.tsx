import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useId, useState, type ReactNode } from 'react';
import { answered, api, type Schemas } from '../api/client.js';
import { Failed } from '../shell/states.js';
import { useSettingsWords } from './settings-words.js';

/** A button that opens into a field for another name. */
export function RenameDevice({ held: { id, label } }: { readonly held: Schemas['AccessKey'] }): ReactNode {
  const settings = useSettingsWords();
  const queries = useQueryClient();
  const field = useId();
  const [name, setName] = useState<string>();
  const rename = useMutation({
    mutationFn: (wanted: string) =>
      answered(api.PATCH('/api/keys/{id}', { params: { path: { id } }, body: { label: wanted } })),
    onSuccess: async () => {
      setName(undefined);
      await queries.invalidateQueries({ queryKey: ['keys'] });
    },
  });
  if (name === undefined) {
    return (
      <>
        <button
          type="button"
          className="button plain"
          aria-label={settings.renameThis(label)}
          onClick={() => setName(label)}
        >
          {settings.rename}
        </button>
        <span role="status" className="small soft">
          {rename.isSuccess && settings.renamed(label)}
        </span>
      </>
    );
  }
  return (
    <form
      className="stack tight"
      onSubmit={(event) => {
        event.preventDefault();
        rename.mutate(name);
      }}
    >
      <div className="field">
        <label htmlFor={field}>{settings.deviceName}</label>
        <input
          id={field}
          value={name}
          required
          maxLength={60}
          // It was opened by a tap, to be written in.
          autoFocus
          onChange={({ target }) => setName(target.value)}
        />
      </div>
      <div className="row">
        <button type="submit" className="button main" disabled={rename.isPending}>
          {settings.saveName}
        </button>
        <button type="button" className="button" onClick={() => setName(undefined)}>
          {settings.cancel}
        </button>
      </div>
      {rename.error !== null && <Failed error={rename.error} again={() => rename.mutate(name)} />}
    </form>
  );
}
