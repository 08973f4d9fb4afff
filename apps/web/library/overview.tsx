import { Plus } from 'lucide-react';
import { useState, type ReactNode } from 'react';
import { Link } from 'react-router';
import { Failed, Loading } from '../shell/states.js';
import { useTexts } from '../look/use-texts.js';
import { useWords } from '../words/words.js';
import { ThingLine } from './thing-line.js';
import { useShippedFats, useThings, type Kind } from './shelf-calls.js';
import '../form/form.css';
import './library.css';

const kinds: readonly Kind[] = ['designs', 'recipes', 'moulds', 'fats'];

/** Everything the maker keeps, by kind, with a search over all of it. */
export default function Overview(): ReactNode {
  const { library } = useWords();
  const [search, setSearch] = useState('');
  const isOnItsWay = useIsOnItsWay();
  return (
    <div className="stack">
      <header className="stack tight">
        <h1>{library.title}</h1>
        <p className="soft">{library.lead}</p>
        <p className="small">
          <Link className="tap" to="/guide">
            {library.guide}
          </Link>{' '}
          {library.guideHow}
        </p>
        <p className="row">
          <Link className="button" to="stock">
            {library.stockLink}
          </Link>
          <Link className="button plain" to="tools">
            {library.toolsLink}
          </Link>
        </p>
      </header>
      <div className="field finder">
        <label htmlFor="search">{library.search}</label>
        <input
          id="search"
          type="search"
          value={search}
          autoComplete="off"
          onChange={({ target }) => setSearch(target.value)}
        />
      </div>
      {isOnItsWay ? (
        <Loading />
      ) : (
        <div className="kinds">
          {kinds.map((kind) => (
            <Shelf key={kind} kind={kind} search={search} />
          ))}
        </div>
      )}
    </div>
  );
}

/** All shelves come at once, or each would push the others about. */
function useIsOnItsWay(): boolean {
  const asked = [
    useThings('designs'),
    useThings('recipes'),
    useThings('moulds'),
    useThings('fats'),
    useShippedFats(),
  ];
  return asked.some(({ isPending }) => isPending);
}

function Shelf({ kind, search }: { readonly kind: Kind; readonly search: string }): ReactNode {
  const { library } = useWords();
  const { data, error, refetch } = useThings(kind);
  const found = (data ?? [])
    .filter(({ content }) => isFound(content.title, search))
    .sort((a, b) => a.content.title.localeCompare(b.content.title));
  return (
    <section className="card stack tight" aria-labelledby={`kind-${kind}`}>
      <div className="row apart">
        <h2 id={`kind-${kind}`}>{library.kinds[kind]}</h2>
        <Link className="button plain" to={`${kind}/new`}>
          <Plus size={20} aria-hidden /> {library.newOf[kind]}
        </Link>
      </div>
      {data === undefined &&
        (error === null ? <Loading /> : <Failed error={error} again={() => void refetch()} />)}
      {data?.length === 0 && <p className="soft">{library.emptyOf[kind]}</p>}
      {data !== undefined && data.length > 0 && found.length === 0 && (
        <p className="soft">{library.noneFound(search)}</p>
      )}
      <ul className="things">
        {found.map((thing) => (
          <li key={thing.id}>
            <Link className="tap" to={`${kind}/${thing.id}`}>
              {thing.content.title}
            </Link>
            <ThingLine thing={thing} kind={kind} />
          </li>
        ))}
      </ul>
      {kind === 'fats' && <ShippedFats search={search} />}
    </section>
  );
}

function ShippedFats({ search }: { readonly search: string }): ReactNode {
  const { library } = useWords();
  const { titled, language } = useTexts();
  const { data = [] } = useShippedFats();
  const found = data
    .map(({ key, title, inci = '', soapInci = '', aliases }) => ({
      key,
      title: titled(key, title),
      names: [title, inci, soapInci, ...aliases].join(' '),
    }))
    .filter(({ title, names }) => isFound(`${title} ${names}`, search))
    .sort((a, b) => a.title.localeCompare(b.title, language));
  if (found.length === 0) return null;
  return (
    <details className="more" open={search !== '' || undefined}>
      <summary>
        {library.shippedFats} ({found.length})
      </summary>
      <ul className="things close">
        {found.map(({ key, title }) => (
          <li key={key}>
            <Link className="tap" to={`fats/shipped/${key}`}>
              {title}
            </Link>
          </li>
        ))}
      </ul>
    </details>
  );
}

function isFound(text: string, search: string): boolean {
  return text.toLocaleLowerCase().includes(search.trim().toLocaleLowerCase());
}
