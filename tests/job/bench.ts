/** A job in memory for tests: read from a text, marked by wishes, looked at. */

import { applyEdits } from '../../src/job/edit/splice.ts';
import { judge } from '../../src/job/judge/judge.ts';
import { jobOf, readJob } from '../../src/job/read.ts';
import type { Entry, Job, Verdict, Wish } from '../../src/model/types.ts';

/** Upper part of a cover with five holes, one with a clip; a lever over it; a hose. */
export const COVER = `putback: 1
job: Cover weeps
bolts:
  S: M6x25 flange, 8 mm
  M: M6x35 flange, 8 mm
  L: M6x55 flange, 8 mm
pieces:
  lever: {bolts: S}
  hose:
  cover:
    under: [lever]
    bolts: S S M+clip L S
    torque: 10 N·m, manual 2-17
diary:
`;

export class Bench {
  text: string;
  entries: Entry[] = [];
  private count = 0;
  /** What was last folded, and from what: it is asked for far more often than it changes. */
  private folded: { text: string; entries: number; job: Job } | null = null;

  constructor(text: string = COVER) {
    this.text = text;
  }

  get job(): Job {
    const { text, entries, folded } = this;
    if (folded?.text === text && folded.entries === entries.length) return folded.job;
    const job = jobOf({ ...readJob(text, 'job.yaml'), entries });
    this.folded = { text, entries: entries.length, job };
    return job;
  }

  /** Judges without writing. */
  ask(wish: Wish): Verdict {
    return judge(this.job, wish, {
      at: '2026-04-11T18:25:40+02:00',
      id: `id${`${this.count}`.padStart(6, '0')}`,
    });
  }

  /** Judges and keeps; throws on a refusal, so that a test says what it expected. */
  mark(wish: Wish): Entry {
    const verdict = this.ask(wish);
    if (!verdict.ok) throw new Error(`${verdict.refused.code}: ${verdict.refused.say}`);
    if (!verdict.entry) throw new Error(`already so: ${JSON.stringify(wish)}`);
    const text = applyEdits(this.text, verdict.edits);
    if (typeof text !== 'string') throw new Error(text.fault);
    this.text = text;
    this.entries.push(verdict.entry);
    this.count += 1;
    return verdict.entry;
  }

  /** `{code, …data}` of a refusal, or what else came. */
  refusal(wish: Wish): object {
    const verdict = this.ask(wish);
    return verdict.ok
      ? { ok: true, entry: verdict.entry }
      : { code: verdict.refused.code, ...verdict.refused.data };
  }

  warnings(wish: Wish): string[] {
    const verdict = this.ask(wish);
    return verdict.ok ? verdict.warnings.map((w) => w.code) : [verdict.refused.code];
  }

  piece(key = 'cover') {
    const piece = this.job.pieces.get(key);
    if (!piece) throw new Error(`no piece ${key}`);
    return piece;
  }

  /** `1 home, 2 out, …` */
  states(key = 'cover'): string {
    return this.piece(key)
      .holes.map((h) => h.state)
      .join(' ');
  }

  hole(name: string, key = 'cover') {
    const hole = this.piece(key).holes.find((h) => h.name === name);
    if (!hole) throw new Error(`no hole ${name}`);
    return hole;
  }

  /** Lever away, cover open, all as claimed. */
  openCover(): this {
    this.mark({ do: 'out', piece: 'lever' });
    this.mark({ do: 'off', piece: 'lever' });
    this.mark({ do: 'out', piece: 'cover' });
    this.mark({ do: 'off', piece: 'cover', tray: 'cup 2' });
    return this;
  }

  fillCover(): this {
    for (const kind of ['S', 'M', 'L']) this.mark({ do: 'in', piece: 'cover', hand: { kind } });
    return this;
  }

  tightenCover(): this {
    this.mark({ do: 'tight', piece: 'cover' });
    this.mark({ do: 'tight', piece: 'cover' });
    return this;
  }
}
