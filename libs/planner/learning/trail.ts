/** Why an entry of the trail holds; `ref` says which one. */
export const Kind = {
  /** A decision, or a fact at the root. */
  given: 0,
  /** A lag; `ref` is its edge. */
  edge: 1,
  /** A clause; `ref` is its place in the clause store. */
  clause: 2,
  /** Literals written down when it happened; `ref` is their place in `notes`. */
  note: 3,
} as const;

/**
 * Bounds of whole variables and how they came about.
 *
 * Variable x has two sides: side 2x bounds x from below, side 2x + 1 bounds −x from below. A literal is a pair
 * (side, value) that claims "the bound of the side is at least the value"; its negation is (side ^ 1, 1 − value). So
 * every literal of a start, [S ≥ v] or [S ≤ v], exists without being made; a choice is a variable of 0 and 1.
 *
 * Fields are public and flat because the innermost loops live on them.
 */
export class Trail {
  readonly bound: Int32Array;
  /** The newest entry of each side; the first entries are the bounds at the start. */
  readonly top: Int32Array;
  side: Int32Array;
  value: Int32Array;
  /** The entry before of the same side. */
  previous: Int32Array;
  kind: Uint8Array;
  ref: Int32Array;
  size: number;
  /** Where each level begins; level 0 is the root. */
  readonly levelStart: number[] = [0];
  private readonly noteStart: number[] = [0];
  /** Reasons written down: a count, then as many pairs of side and value. */
  notes = new Int32Array(1 << 12);
  noteSize = 0;
  /** A set of literals that cannot all hold, as pairs; of use after a propagation failed. */
  readonly conflict: number[] = [];
  /** The entry that crossed the other side and failed so, or −1. Its reasons, not itself, belong to the conflict. */
  crossing = -1;

  /** @param bounds the bounds of all sides, two for each variable */
  constructor(bounds: Int32Array) {
    const sides = bounds.length;
    this.bound = bounds;
    this.top = Int32Array.from({ length: sides }, (_, side) => side);
    const room = sides + (1 << 12);
    this.side = new Int32Array(room);
    this.value = new Int32Array(room);
    this.previous = new Int32Array(room).fill(-1);
    this.kind = new Uint8Array(room);
    this.ref = new Int32Array(room);
    for (let side = 0; side < sides; side++) {
      this.side[side] = side;
      this.value[side] = bounds[side]!;
    }
    this.size = sides;
  }

  get level(): number {
    return this.levelStart.length - 1;
  }

  newLevel(): void {
    this.levelStart.push(this.size);
    this.noteStart.push(this.noteSize);
  }

  /**
   * Raises a bound; no effect where it is as high already.
   * @returns false, with `conflict` set, when it crosses the other side
   */
  raise(side: number, value: number, kind: number, ref: number): boolean {
    if (value <= this.bound[side]!) return true;
    const entry = this.size++;
    if (entry === this.side.length) this.grow();
    this.side[entry] = side;
    this.value[entry] = value;
    this.previous[entry] = this.top[side]!;
    this.kind[entry] = kind;
    this.ref[entry] = ref;
    this.top[side] = entry;
    this.bound[side] = value;
    const other = this.bound[side ^ 1]!;
    if (value + other <= 0) return true;
    this.conflict.length = 0;
    this.conflict.push(side ^ 1, other);
    this.crossing = entry;
    return false;
  }

  /** Takes back all levels above `level`. @param onDrop told the side of every entry taken back */
  backtrack(level: number, onDrop: (side: number) => void): void {
    if (level >= this.level) return;
    const start = this.levelStart[level + 1]!;
    while (this.size > start) {
      const entry = --this.size;
      const side = this.side[entry]!;
      const before = this.previous[entry]!;
      this.top[side] = before;
      this.bound[side] = this.value[before]!;
      onDrop(side);
    }
    this.noteSize = this.noteStart[level + 1]!;
    this.levelStart.length = level + 1;
    this.noteStart.length = level + 1;
  }

  /** The entry by which a literal that holds first held. */
  entryOf(side: number, value: number): number {
    const { previous, value: values } = this;
    let entry = this.top[side]!;
    for (;;) {
      const before = previous[entry]!;
      if (before < 0 || values[before]! < value) return entry;
      entry = before;
    }
  }

  levelOf(entry: number): number {
    const { levelStart } = this;
    let low = 0;
    let high = levelStart.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (levelStart[middle]! <= entry) low = middle;
      else high = middle;
    }
    return low;
  }

  /** Begins a note; literals follow by `note`. @returns its place */
  beginNote(): number {
    if (this.noteSize + 2 >= this.notes.length) this.notes = grown(this.notes);
    this.notes[this.noteSize] = 0;
    return this.noteSize++;
  }

  note(place: number, side: number, value: number): void {
    if (this.noteSize + 2 >= this.notes.length) this.notes = grown(this.notes);
    this.notes[this.noteSize++] = side;
    this.notes[this.noteSize++] = value;
    this.notes[place]!++;
  }

  private grow(): void {
    this.side = grown(this.side);
    this.value = grown(this.value);
    this.previous = grown(this.previous);
    this.ref = grown(this.ref);
    const kind = new Uint8Array(2 * this.kind.length);
    kind.set(this.kind);
    this.kind = kind;
  }
}

/** The same numbers with as much room again. */
export function grown(array: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(2 * array.length);
  larger.set(array);
  return larger;
}
