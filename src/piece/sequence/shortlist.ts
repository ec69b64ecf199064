/** The lowest few of many offers, each key once; of equal ones the earlier. A heap with the worst on top. */
export class Shortlist {
  readonly size: number;
  count = 0;
  readonly score: Float64Array;
  readonly parent: Int32Array;
  readonly item: Int32Array;
  private readonly turn: Int32Array;
  private readonly seen = new Set<number>();
  private turns = 0;

  constructor(size: number) {
    this.size = size;
    this.score = new Float64Array(size + 1);
    this.parent = new Int32Array(size + 1);
    this.item = new Int32Array(size + 1);
    this.turn = new Int32Array(size + 1);
  }

  clear(): void {
    this.count = 0;
    this.turns = 0;
    this.seen.clear();
  }

  /** No offer with this score or a higher one is taken. */
  full(score: number): boolean {
    return this.count === this.size && score >= (this.score[1] ?? 0);
  }

  offer(score: number, parent: number, item: number, key: number): void {
    if (this.full(score) || this.seen.has(key)) return;
    this.seen.add(key);
    this.turns += 1;
    if (this.count < this.size) {
      this.count += 1;
      this.rise(this.count, score, parent, item, this.turns);
    } else {
      this.sink(score, parent, item, this.turns);
    }
  }

  /** Is place `a` worse than this score and turn? */
  private worse(a: number, score: number, turn: number): boolean {
    const other = this.score[a] ?? 0;
    return other > score || (other === score && (this.turn[a] ?? 0) > turn);
  }

  private put(at: number, score: number, parent: number, item: number, turn: number): void {
    this.score[at] = score;
    this.parent[at] = parent;
    this.item[at] = item;
    this.turn[at] = turn;
  }

  private move(from: number, to: number): void {
    const { score, parent, item, turn } = this;
    this.put(to, score[from] ?? 0, parent[from] ?? 0, item[from] ?? 0, turn[from] ?? 0);
  }

  private rise(last: number, score: number, parent: number, item: number, turn: number): void {
    let at = last;
    while (at > 1 && !this.worse(at >> 1, score, turn)) {
      this.move(at >> 1, at);
      at >>= 1;
    }
    this.put(at, score, parent, item, turn);
  }

  private sink(score: number, parent: number, item: number, turn: number): void {
    let at = 1;
    for (;;) {
      let child = 2 * at;
      if (child > this.count) break;
      const right = child + 1;
      if (right <= this.count && this.worse(right, this.score[child] ?? 0, this.turn[child] ?? 0)) {
        child = right;
      }
      if (!this.worse(child, score, turn)) break;
      this.move(child, at);
      at = child;
    }
    this.put(at, score, parent, item, turn);
  }
}
