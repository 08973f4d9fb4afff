import {
  CalendarClock,
  Ellipsis,
  FlaskConical,
  Footprints,
  GraduationCap,
  Hand,
  Layers,
  Library,
  Settings2,
  Sunrise,
} from 'lucide-react';
import type { ReactNode } from 'react';
import { NavLink, useLocation } from 'react-router';
import { useWords } from '../words/words.js';
import { Failures } from './failures.js';
import { PageChange } from './page-change.js';

interface Place {
  readonly to: string;
  readonly icon: typeof Hand;
  readonly name: 'now' | 'runs' | 'plan' | 'makings' | 'shelf' | 'hours' | 'lessons' | 'guide' | 'settings';
}

const places: readonly Place[] = [
  { to: '/', icon: Hand, name: 'now' },
  { to: '/runs', icon: Layers, name: 'runs' },
  { to: '/plan', icon: CalendarClock, name: 'plan' },
  { to: '/shelf', icon: Library, name: 'shelf' },
  { to: '/makings', icon: FlaskConical, name: 'makings' },
  { to: '/hours', icon: Sunrise, name: 'hours' },
  { to: '/lessons', icon: GraduationCap, name: 'lessons' },
  { to: '/guide', icon: Footprints, name: 'guide' },
  { to: '/settings', icon: Settings2, name: 'settings' },
];

/** So many fit beside each other on a phone; the rest opens from there. */
const FIRST = 4;

/** What is around every screen: the way to the others. @param top stands above each of them */
export function Frame({
  top,
  children,
}: {
  readonly top: ReactNode;
  readonly children: ReactNode;
}): ReactNode {
  const { shell } = useWords();
  return (
    <div className="frame">
      <a className="skip" href="#content">
        {shell.skip}
      </a>
      <div className="page">
        {top}
        <main id="content" tabIndex={-1}>
          <Failures>{children}</Failures>
        </main>
      </div>
      <PageChange />
      <nav className="places" aria-label={shell.places}>
        <ul>
          {places.map((place, i) => (
            <PlaceItem key={place.to} {...place} className={i < FIRST ? 'first' : 'rest'} />
          ))}
          <More />
        </ul>
      </nav>
    </div>
  );
}

function PlaceItem({ to, icon: Icon, name, className }: Place & { readonly className?: string }): ReactNode {
  const { shell } = useWords();
  return (
    <li className={className}>
      <NavLink to={to} end={to === '/'}>
        <Icon size={22} aria-hidden />
        <span>{shell[name]}</span>
      </NavLink>
    </li>
  );
}

/** On a phone, the places that have no room; it closes when one is chosen. */
function More(): ReactNode {
  const { shell } = useWords();
  const { pathname } = useLocation();
  const rest = places.slice(FIRST);
  const isThere = rest.some(({ to }) => pathname.startsWith(to));
  return (
    <li className="more">
      <details key={pathname}>
        <summary data-there={isThere}>
          <Ellipsis size={22} aria-hidden />
          <span>{shell.more}</span>
        </summary>
        <ul>
          {rest.map((place) => (
            <PlaceItem key={place.to} {...place} />
          ))}
        </ul>
      </details>
    </li>
  );
}
