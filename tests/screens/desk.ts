/**
 * A person at the screens, without a terminal or a disk: keys go in, what they ask for is carried out in
 * memory by the real judge and fold, and the state and the picture can be looked at.
 */

import type { Wrench } from '../../src/bolt/torque/wrench.ts';
import { startsShipped } from '../../src/diary/starts.made.ts';
import type { Held } from '../../src/find/question.ts';
import type { Due } from '../../src/memory/due.ts';
import type { Before } from '../../src/memory/last.ts';
import type { Recorded, Wish } from '../../src/model/types.ts';
import { type Opening, start } from '../../src/screens/base/start.ts';
import type { Effect, Happening, PieceStep, State, Updated } from '../../src/screens/base/state.ts';
import { rowsOf } from '../../src/screens/show/picture.ts';
import { keyIn } from '../../src/screens/show/press.ts';
import { update } from '../../src/screens/show/update.ts';
import { benchRow } from '../../src/screens/terminal/bench-row.ts';
import type { Bench } from '../job/bench.ts';

export const FILE = 'cover.yaml';
/** The clock of Bench's marks stands at 18:25 on this day. */
export const SAME_DAY = '2026-04-11T18:40:00+02:00';

export class Desk {
  state: State;
  /** What was asked of the loop, in order; reading and writing left out. */
  done: string[] = [];
  /** Answers are held back until `answer()`. */
  holds = false;
  /** What the disk says instead of writing. */
  broken: Extract<Recorded, { ok: false }> | null = null;
  private held: Effect[] = [];
  /** Earlier jobs on the machine. */
  before: readonly Before[] = [];
  /** What follows from the jobs of the bench. */
  due: readonly Due[] = [];
  /** What words find. */
  lines: (text: string) => readonly Held[] = () => [];

  readonly bench: Bench;

  /** Those of the bench's settings. */
  readonly wrenches: readonly Wrench[];

  constructor(
    bench: Bench,
    look: Partial<Omit<Opening, 'on'>> & { on?: Opening['on'] } = {},
    wrenches: readonly Wrench[] = [],
  ) {
    this.bench = bench;
    this.wrenches = wrenches;
    const opening: Opening = {
      on: { file: FILE },
      columns: 80,
      rows: 24,
      colour: false,
      ascii: false,
      now: SAME_DAY,
      ...look,
    };
    const first = start(opening);
    this.state = first.state;
    this.carryOut(first);
  }

  happen(happening: Happening): this {
    this.carryOut(update(this.state, happening));
    return this;
  }

  /** Words are presses: `space`, `s`, `escape`; `go` is the one that goes on from here. */
  press(words: string): this {
    for (const press of words.split(' ').filter((w) => w !== ''))
      this.happen({ on: 'press', press: press === 'go' ? this.goesOn() : press });
    return this;
  }

  /** Space where a bolt is marked or a page only tells, `a` where all is seen, `p` where a test passes, else Enter. */
  private goesOn(): string {
    if (this.state.view.screen === 'gate') return 'a';
    if (keyIn(this.state, 'p')?.id === 'task-passed') return 'p';
    return keyIn(this.state, 'space') === null ? 'enter' : 'space';
  }

  /** A key that is held down: the first press, then as many that its keyboard repeats. */
  hold(press: string, more: number): this {
    this.happen({ on: 'press', press });
    for (let i = 0; i < more; i += 1) {
      this.happen({ on: 'press', press, held: true, repeats: i >= 2 });
    }
    return this;
  }

  /** Typed without looking, with no pause: `\n` is Enter. */
  blind(text: string): this {
    for (const [i, c] of [...text].entries()) {
      const press = c === ' ' ? 'space' : c === '\n' ? 'enter' : c;
      this.happen({ on: 'press', press, soon: i > 0, held: i > 0 && text[i - 1] === c });
    }
    return this;
  }

  /** A text, character by character. */
  type(text: string): this {
    for (const c of text) this.happen({ on: 'press', press: c === ' ' ? 'space' : c });
    return this;
  }

  /** Opens a piece from the list of pieces, wherever one is. */
  open(piece: string): this {
    this.press('escape escape escape escape');
    if (this.state.view.screen !== 'job') this.press('space');
    this.state = { ...this.state, view: { screen: 'job', here: piece } };
    return this.press('space');
  }

  private carryOut({ state, effects }: Updated): void {
    this.state = state;
    for (const effect of effects) {
      if (this.holds) this.held.push(effect);
      else this.carry(effect);
    }
  }

  /** What was held back is carried out, the oldest first. */
  answer(): this {
    const effect = this.held.shift();
    if (effect) this.carry(effect);
    return this;
  }

  private carry(effect: Effect): void {
    switch (effect.do) {
      case 'record':
        this.happen({
          on: 'recorded',
          file: effect.file,
          wish: effect.wish,
          result: this.record(effect.wish),
        });
        break;
      case 'open':
        this.happen({
          on: 'file',
          file: effect.file,
          read: { ok: true, job: this.bench.job, faults: [] },
          wrenches: this.wrenches,
          starts: startsShipped(),
        });
        break;
      case 'start': {
        const unread = { code: 'exists', say: `${effect.file} is there already.`, fix: 'Another.' };
        this.happen({ on: 'file', file: effect.file, read: { ok: false, unread }, unmade: true });
        break;
      }
      case 'list': {
        const read = { ok: true, job: this.bench.job, faults: [] } as const;
        this.happen({
          on: 'bench',
          jobs: [benchRow(FILE, { ...read, faults: [] }, this.state.now)],
        });
        break;
      }
      case 'earlier':
        this.happen({ on: 'earlier', file: effect.file, before: this.before, older: 0 });
        break;
      case 'due':
        this.happen({ on: 'due', due: this.due });
        break;
      case 'find':
        this.happen({ on: 'found', text: effect.text, found: this.lines(effect.text), unread: [] });
        break;
      case 'milestone':
        this.done.push(`${effect.piece} ${effect.place}`);
        break;
      default:
        this.done.push(effect.do);
    }
  }

  private record(wish: Wish): Recorded {
    if (this.broken) return this.broken;
    const before = this.bench.job;
    const verdict = this.bench.ask(wish);
    if (!verdict.ok) return { ok: false, refused: verdict.refused, job: before };
    const { entry, warnings } = verdict;
    if (entry) this.bench.mark(wish);
    return { ok: true, changed: entry !== null, entry, warnings, job: this.bench.job, before };
  }

  // ---------------------------------------------------------------- what can be seen

  get rows(): string[] {
    return rowsOf(this.state);
  }

  /** The picture without blanks at the ends of lines. */
  get frame(): string {
    return this.rows.map((r) => r.trimEnd()).join('\n');
  }

  get step(): PieceStep['step'] | null {
    return this.state.view.screen === 'piece' ? this.state.view.step.step : null;
  }

  get screen(): string {
    return this.step ?? this.state.view.screen;
  }
}
