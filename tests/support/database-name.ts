/** The same server, another database. */
export function databaseNamed(url: string, name: string): string {
  const changed = new URL(url);
  changed.pathname = `/${name}`;
  return changed.toString();
}

/**
 * The name of a database that tests may fill and drop.
 * @throws when it has no "test" in it, so that a mistyped address never costs anyone their data
 */
export function requireTestName(url: string): string {
  const name = decodeURIComponent(new URL(url).pathname.slice(1));
  if (!/^[a-z0-9_]*test[a-z0-9_]*$/.test(name)) {
    throw new Error(`Tests only touch databases with "test" in their name; this one is called "${name}".`);
  }
  return name;
}
