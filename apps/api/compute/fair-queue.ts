/**
 * Who is next. What is more urgent goes first; within one urgency the owners take turns, however much each has
 * waiting, and what one owner asked for keeps its order.
 */
export class FairQueue<T> {
  /** By urgency, 0 first; owners in the order of their turns. */
  private readonly waiting: Map<string, T[]>[] = [];
  private count = 0;

  /** How many wait; of one owner at one urgency, or of all. */
  size(owner?: string, urgency = 0): number {
    return owner === undefined ? this.count : (this.waiting[urgency]?.get(owner)?.length ?? 0);
  }

  push(item: T, owner: string, urgency: number): void {
    while (this.waiting.length <= urgency) this.waiting.push(new Map());
    const owners = this.waiting[urgency]!;
    const own = owners.get(owner);
    if (own === undefined) owners.set(owner, [item]);
    else own.push(item);
    this.count += 1;
  }

  /** Takes the next out. @param upTo leaves what is less urgent than this where it is */
  next(upTo = Infinity): T | undefined {
    for (const [urgency, owners] of this.waiting.entries()) {
      const turn = owners.entries().next();
      if (urgency > upTo || turn.done === true) continue;
      const [owner, [item, ...rest]] = turn.value;
      owners.delete(owner);
      if (rest.length > 0) owners.set(owner, rest);
      this.count -= 1;
      return item;
    }
    return undefined;
  }

  /** Takes one out of turn, if it still waits. */
  remove(item: T): boolean {
    for (const owners of this.waiting) {
      for (const [owner, own] of owners) {
        const place = own.indexOf(item);
        if (place < 0) continue;
        own.splice(place, 1);
        if (own.length === 0) owners.delete(owner);
        this.count -= 1;
        return true;
      }
    }
    return false;
  }
}
