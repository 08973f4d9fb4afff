/** What was said before and need only be pointed to. */
export class Seen {
  readonly #titles = new Map<string, string>();

  /** Title of what said the same before; undefined the first time. */
  before(said: string, title: string): string | undefined {
    const before = this.#titles.get(said);
    if (before === undefined) this.#titles.set(said, title);
    return before;
  }
}
