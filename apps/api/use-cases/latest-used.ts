/** Values by name, of which the ones used latest are kept. */
export class LatestUsed<T> {
  private readonly values = new Map<string, T>();

  /** @param most how many are kept */
  constructor(private readonly most: number) {}

  /** The value under a name; made, and kept, where there is none. */
  async get(name: string, make: () => Promise<T>): Promise<T> {
    const value = this.peek(name) ?? (await make());
    this.put(name, value);
    return value;
  }

  peek(name: string): T | undefined {
    return this.values.get(name);
  }

  put(name: string, value: T): void {
    this.values.delete(name);
    this.values.set(name, value);
    const [oldest] = this.values.keys();
    if (this.values.size > this.most && oldest !== undefined) this.values.delete(oldest);
  }
}
