/** A binary heap of nodes by key, least first, in which keys can fall. */
export class NodeHeap {
  readonly key: Float64Array;
  private readonly heap: Int32Array;
  /** Where each node is in the heap, or -1. */
  private readonly place: Int32Array;
  private size = 0;

  constructor(count: number) {
    this.key = new Float64Array(count);
    this.heap = new Int32Array(count);
    this.place = new Int32Array(count).fill(-1);
  }

  clear(): void {
    for (let at = 0; at < this.size; at++) this.place[this.heap[at]!] = -1;
    this.size = 0;
  }

  /** Adds the node, or lowers its key. @returns false when it is there with a key as low */
  lower(node: number, key: number): boolean {
    let at = this.place[node]!;
    if (at < 0) at = this.size++;
    else if (key >= this.key[node]!) return false;
    this.key[node] = key;
    while (at > 0) {
      const up = (at - 1) >> 1;
      const above = this.heap[up]!;
      if (this.key[above]! <= key) break;
      this.put(above, at);
      at = up;
    }
    this.put(node, at);
    return true;
  }

  /** Takes the node with the least key out; -1 when there is none. */
  pop(): number {
    if (this.size === 0) return -1;
    const least = this.heap[0]!;
    this.place[least] = -1;
    this.size -= 1;
    if (this.size > 0) this.sink(this.heap[this.size]!);
    return least;
  }

  private sink(node: number): void {
    const key = this.key[node]!;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= this.size) break;
      if (down + 1 < this.size && this.key[this.heap[down + 1]!]! < this.key[this.heap[down]!]!) down += 1;
      const below = this.heap[down]!;
      if (this.key[below]! >= key) break;
      this.put(below, at);
      at = down;
    }
    this.put(node, at);
  }

  private put(node: number, at: number): void {
    this.heap[at] = node;
    this.place[node] = at;
  }
}
