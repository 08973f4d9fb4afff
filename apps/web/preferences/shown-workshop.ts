/** Id of the demo that this device looks at; absent: it shows the maker's own workshop. */
const KEY = 'benchtide.workshop';

/** The same for as long as a page is open: another tab may change what the next page shows, and never what this one changes. */
const shown = read();

/** Id of the demo that this page shows; null: it shows the maker's own workshop. */
export function shownDemo(): string | null {
  return shown;
}

/** A name for what this browser keeps of the workshop that the page shows, so that nothing of the demo turns up elsewhere. */
export function forShown(name: string): string {
  return shown === null ? name : `${name}@${shown}`;
}

/** Shows another workshop from here on. @param demo id of the demo; null: the maker's own workshop */
export function showWorkshop(demo: string | null): void {
  if (demo === null) localStorage.removeItem(KEY);
  else localStorage.setItem(KEY, demo);
  location.assign('/');
}

function read(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}
