/** What a text field is for: types only. What each asks and does is in `ask/`. */
import type { Figure } from '../../job/truth/corrections.ts';
import type { Moment, Refusal, Wish, Writable } from '../../model/types.ts';
import type { AnswerKind } from '../../plan/piece/answers.ts';
import type { Put } from '../../plan/typed/runs.ts';

/** The piece at hand, the hole that is pointed at, the gate that is open. */
export interface AddTo {
  piece: string | null;
  hole: string | null;
  moment: Moment | null;
}

/** What a text field is for. */
export type Asks =
  | { ask: 'why'; wish: Wish; refused: Refusal }
  | { ask: 'note'; piece: string | null; hole: string | null }
  /** The name of a piece that the file does not know yet. `slip`: what was typed, and the one it is most likely a slip of. */
  | { ask: 'piece'; slip?: { text: string; meant: string } }
  | { ask: 'tray'; piece: string; how: 'off' | 'aside' }
  /** What lay under the head of each word of a row that ends in `+`; `at` is the word asked about. */
  | { ask: 'under'; words: readonly string[]; at: number }
  /** `kind`: the one that is known to belong there. */
  | { ask: 'belongs'; hole: string; kind: string | null }
  /** The way that was taken with a pulled thread, or what else was done about a trouble. */
  | { ask: 'mended'; piece: string; hole: string }
  /** `say` is what is wrong with what was typed. */
  | { ask: AnswerKind; piece: string; say: string | null }
  | KnownAsks
  | JobAsks
  | TraceAsks;

/** About a fault, and about renewing a thing. `say`: what is wrong with what was typed. */
export type TraceAsks =
  /** Suspects, a line each, until an empty one; then looks in the same way. */
  | { ask: 'listed'; of: 'suspects' | 'looks'; say: string | null }
  | { ask: 'reading'; check: string; say: string | null }
  /** What was put in to try; then how that went. */
  | { ask: 'put'; suspect: string }
  | { ask: 'went'; suspect: string; say: string | null }
  /** Why it is left; what it is weighed by. */
  | { ask: 'leaving'; task: string }
  | { ask: 'left-so'; piece: string; what: string }
  | { ask: 'figures'; task: string; say: string | null };

/** `say`: what is wrong with what was typed. */
export type KnownAsks =
  /** What is true where something is printed that is not so. */
  | { ask: 'truth'; figure: Figure; say: string | null }
  /** A text for a key of a piece. `more` is put in after it; `runs`: of a piece without bolts that just came off. */
  | {
      ask: 'write';
      piece: string;
      key: Writable;
      more: readonly Put[];
      say: string | null;
      runs?: true;
    };

/** What is asked about the whole job. */
export type JobAsks =
  /** What went in through an opening, and what came out again. */
  | { ask: 'inside' | 'cleared'; piece: string | null }
  /** How what stood open over night is closed. */
  | { ask: 'covered'; piece: string }
  /** One line, of whatever it is. */
  | ({ ask: 'add' } & AddTo)
  /** The day for which something ordered is promised; the number that it has now. */
  | { ask: 'promised'; buy: string; say: string | null }
  | { ask: 'number'; buy: string }
  /** Why it does not fit. */
  | { ask: 'misfit'; buy: string }
  /** What came of a task. */
  | { ask: 'result'; task: string; how: 'done' | 'failed'; say?: string }
  /** The name of a job that begins. */
  | { ask: 'job'; say: string | null }
  /** How long one has. */
  | { ask: 'minutes'; say: string | null }
  /** What the machine's counter says. */
  | { ask: 'counter'; say: string | null };
