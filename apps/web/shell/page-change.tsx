import { useEffect, useRef, useState, type ReactNode } from 'react';
import { useLocation } from 'react-router';

/**
 * Tells of every change of page, as a browser does where pages are documents of their own: the title names the page, the title is read
 * out, and the focus goes to its heading, but for the tabs of a run, which stay where they are. What a page is called is its heading, so
 * no page has to say it twice.
 */
export function PageChange(): ReactNode {
  const { pathname } = useLocation();
  const place = placeOf(pathname);
  const [told, setTold] = useState('');
  const before = useRef<string>(place);
  useEffect(() => {
    const main = document.getElementById('content');
    if (main === null) return undefined;
    let isNew = before.current !== place;
    before.current = place;
    const look = (): void => {
      const heading = main.querySelector('h1');
      if (heading === null) return;
      const name = titleOf(main, heading);
      if (document.title !== name) document.title = name;
      setTold(name);
      if (isNew) focusOn(heading);
      isNew = false;
    };
    look();
    const observer = new MutationObserver(look);
    observer.observe(main, { childList: true, subtree: true, characterData: true });
    return () => observer.disconnect();
  }, [pathname, place]);
  return (
    <p className="visually-hidden" role="status">
      {told}
    </p>
  );
}

/** Pages that share a heading are one place: the tabs of a run. */
function placeOf(pathname: string): string {
  return pathname.startsWith('/runs/') ? pathname.split('/', 3).join('/') : pathname;
}

function titleOf(main: HTMLElement, heading: Element): string {
  const tab = main.querySelector('nav a[aria-current="page"]')?.textContent;
  return [tab, heading.textContent, 'Benchtide'].filter((part) => part?.trim()).join(' – ');
}

function focusOn(heading: HTMLElement): void {
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
  window.scrollTo(0, 0);
}
