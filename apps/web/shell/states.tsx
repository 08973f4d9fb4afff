import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { ApiError } from '../api/client.js';
import { useWords } from '../words/words.js';

/** While something is on its way. */
export function Loading(): ReactNode {
  return (
    <p role="status" className="soft">
      {useWords().shell.loading}
    </p>
  );
}

/** What went wrong, in the language of the page. */
export function useErrorText(): (error: Error) => string {
  const { shell } = useWords();
  return (error) => {
    if (error instanceof ApiError) {
      const { issues = [], title } = error.problem ?? {};
      return issues.length > 0 && title !== undefined ? title : error.message;
    }
    return error instanceof TypeError ? shell.noAnswer : shell.failed;
  };
}

/** What went wrong, and a way on. @param again tries what failed once more; absent: by loading the page anew */
export function Failed({ error, again }: { readonly error: Error; readonly again?: () => void }): ReactNode {
  const { shell } = useWords();
  const text = useErrorText();
  return (
    <div role="alert" className="note coral stack tight">
      <p>{text(error)}</p>
      {error instanceof ApiError && <Fields error={error} />}
      <p>
        <button type="button" className="button" onClick={again ?? (() => location.reload())}>
          {shell.again}
        </button>
      </p>
    </div>
  );
}

/** Which fields the API complains about, in the language that it was asked for. */
function Fields({ error }: { readonly error: ApiError }): ReactNode {
  const issues = error.problem?.issues ?? [];
  return (
    issues.length > 0 && (
      <ul>
        {issues.map(({ code, path, field, message }) => (
          <li key={`${code} ${path}`}>{field === undefined ? message : `${field}: ${message}`}</li>
        ))}
      </ul>
    )
  );
}

export function NothingHere(): ReactNode {
  const { shell } = useWords();
  return (
    <div className="stack">
      <h1>{shell.nothingHere}</h1>
      <p>
        <Link className="button" to="/">
          {shell.toNow}
        </Link>
      </p>
    </div>
  );
}
