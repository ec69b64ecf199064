/**
 * What can stand behind a key of a job file: the kinds of values. What each is once it is read stands in types/upper.ts,
 * what it is where the file says nothing in types/fields.ts, how it is read and checked in job/form, how it is corrected in
 * job/truth: all complete over these kinds.
 */

/** What stands behind the key, in a fault and beside a key in an editor. */
export const TAKES = {
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
} as const;
export type ValueName = keyof typeof TAKES;

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
