import {
  CalendarClock,
  FlaskConical,
  GraduationCap,
  Hand,
  Layers,
  Library,
  Settings2,
  Sunrise,
} from 'lucide-react';
import type { ReactNode } from 'react';
import { NavLink } from 'react-router';
import { useWords, type Words } from '../words/words.js';
import { Failures } from './failures.js';

const places: readonly {
  readonly to: string;
  readonly icon: typeof Hand;
  readonly name: keyof Words['shell'] & PlaceName;
}[] = [
  { to: '/', icon: Hand, name: 'now' },
  { to: '/runs', icon: Layers, name: 'runs' },
  { to: '/plan', icon: CalendarClock, name: 'plan' },
  { to: '/makings', icon: FlaskConical, name: 'makings' },
  { to: '/shelf', icon: Library, name: 'shelf' },
  { to: '/hours', icon: Sunrise, name: 'hours' },
  { to: '/lessons', icon: GraduationCap, name: 'lessons' },
  { to: '/settings', icon: Settings2, name: 'settings' },
];
type PlaceName = 'now' | 'runs' | 'plan' | 'makings' | 'shelf' | 'hours' | 'lessons' | 'settings';

/** What is around every screen: the way to the others. */
export function Frame({ children }: { readonly children: ReactNode }): ReactNode {
  const { shell } = useWords();
  return (
    <div className="frame">
      <a className="skip" href="#content">
        {shell.skip}
      </a>
      <main id="content" tabIndex={-1}>
        <Failures>{children}</Failures>
      </main>
      <nav className="places" aria-label={shell.places}>
        <ul>
          {places.map(({ to, icon: Icon, name }) => (
            <li key={to}>
              <NavLink to={to} end={to === '/'}>
                <Icon size={22} aria-hidden />
                <span>{shell[name]}</span>
              </NavLink>
            </li>
          ))}
        </ul>
      </nav>
    </div>
  );
}
