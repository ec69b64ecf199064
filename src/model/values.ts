/**
 * What can stand behind a key of a job file: the kinds of values, what each is once it is read, and what it is where
 * the file says nothing. How each is read and checked stands in job/form, how it is corrected in job/truth, both complete
 * over these kinds.
 */
import type {
  BeforeStep,
  BuySpec,
  Care,
  CheckSpec,
  HoleSpec,
  Kind,
  Likely,
  PassSpec,
  PieceSpec,
  RowItem,
  SuspectSpec,
  TaskSpec,
  ThreadDepth,
  Torque,
} from './types-upper.ts';

export interface Values {
  /** One text on one line. */
  text: string | null;
  /** A text that every file has. */
  title: string;
  /** A name for people; where it is not said, the key with a capital and spaces. */
  called: string;
  texts: string[];
  truth: boolean;
  torque: Torque | null;
  /** mm. */
  length: number | null;
  depth: ThreadDepth | null;
  number: number | null;
  /** Keys of pieces. */
  pieceNames: string[];
  /** Steps as one writes them: `alternator off`, `drain`. */
  stepNames: string[];
  holeNames: string[];
  /** All holes in an order. */
  order: string[] | null;
  /** What belongs in the holes, in their order; null: the file says nothing; empty: a piece without bolts. */
  row: RowItem[] | null;
  /** Said before or beside a step, for each way. */
  ways: BeforeStep;
  /** Lines of cells. */
  picture: string | null;
  /** mm, across and down. */
  pitch: [number, number] | null;
  /** mm, to the right and down, as seen from outside. */
  place: [number, number] | null;
  passes: PassSpec[] | null;
  care: readonly (Care | 'none')[] | null;
  holes: Map<string, HoleSpec>;
  kinds: Map<string, Kind>;
  pieces: Map<string, PieceSpec>;
  tasks: Map<string, TaskSpec>;
  buys: Map<string, BuySpec>;
  suspects: Map<string, SuspectSpec>;
  checks: Map<string, CheckSpec>;
  /** A word, or a weight above zero. */
  likely: Likely | number | null;
  version: number;
  /** A word that must be there. No field of its own: what has it is read by hand. */
  word: never;
  /** The verb of a task, with what is to be done. */
  verb: never;
  /** What a question to decide is weighed by: money and time, a chance, both. In one field, `weigh`. */
  amount: never;
  chance: never;
  harm: never;
  entries: never;
}
export type ValueName = keyof Values;

/** What stands behind the key, in a fault and beside a key in an editor. */
export const TAKES: Readonly<Record<ValueName, string>> = {
  text: 'a text',
  title: 'a text',
  called: 'a text',
  texts: 'a text or a list of texts',
  truth: 'true or false',
  torque: 'a text',
  length: 'a figure in mm',
  depth: 'a depth',
  number: 'a number',
  pieceNames: 'a piece or a list of pieces',
  stepNames: 'a step or a list of steps',
  holeNames: 'a hole or a list of holes',
  order: 'holes in their order',
  row: 'a row of kinds',
  ways: 'texts, or removal and fitting',
  picture: 'lines of numbers and dots behind a bar',
  pitch: 'one figure or two',
  place: 'two figures in a list',
  passes: 'a text or a list of texts',
  care: 'one word or several',
  holes: 'holes by their numbers',
  kinds: 'kinds by their letters',
  pieces: 'pieces by their names',
  tasks: 'tasks by their names',
  buys: 'things by their names',
  suspects: 'suspects by their names',
  checks: 'checks by their names',
  likely: 'a word or a figure',
  version: '1',
  word: 'a text',
  verb: 'a text',
  amount: 'a price, or price and takes',
  chance: 'a chance',
  harm: 'a chance, or chance, price and takes',
  entries: 'a list of entries',
};

/** What a key is of which the file says nothing, anew for each; null where it has no field of its own. */
export const EMPTY: {
  readonly [V in ValueName]: [Values[V]] extends [never] ? null : () => Values[V];
} = {
  text: () => null,
  title: () => '',
  called: () => '',
  texts: () => [],
  truth: () => false,
  torque: () => null,
  length: () => null,
  depth: () => null,
  number: () => null,
  pieceNames: () => [],
  stepNames: () => [],
  holeNames: () => [],
  order: () => null,
  row: () => null,
  ways: () => ({ removal: [], fitting: [] }),
  picture: () => null,
  pitch: () => null,
  place: () => null,
  passes: () => null,
  care: () => null,
  holes: () => new Map(),
  kinds: () => new Map(),
  pieces: () => new Map(),
  tasks: () => new Map(),
  buys: () => new Map(),
  suspects: () => new Map(),
  checks: () => new Map(),
  likely: () => null,
  version: () => 1,
  word: null,
  verb: null,
  amount: null,
  chance: null,
  harm: null,
  entries: null,
};

/** Kinds of values of which a manual can have a text wrong. */
export type CorrectedValue =
  | 'text'
  | 'texts'
  | 'torque'
  | 'length'
  | 'depth'
  | 'number'
  | 'order'
  | 'ways'
  | 'passes'
  | 'verb';

/** Kinds of values that a text can be put into without an editor: into a list one more, else one for all. */
export type WrittenValue = 'texts' | 'pieceNames' | 'text' | 'torque' | 'order' | 'picture' | 'row';
