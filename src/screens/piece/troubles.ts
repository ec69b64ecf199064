/** What can be wrong with a hole or its bolt, and what to do now. */
import type { Trouble } from '../../model/types.ts';
import type { Press } from '../kit/press.ts';

/** In the order in which it is offered, each with its letter. */
export const CHOICES: readonly { letter: Press; trouble: Trouble; say: string }[] = [
  { letter: 's', trouble: 'stuck', say: 'stuck, will not come' },
  { letter: 'r', trouble: 'rounded', say: 'head rounded' },
  { letter: 'b', trouble: 'sheared', say: 'broken off: sheared' },
  { letter: 'd', trouble: 'stud', say: 'the stud came out with it' },
  { letter: 'p', trouble: 'pulled', say: 'thread pulled: turns without tightening' },
  { letter: 'e', trouble: 'empty', say: 'empty: there was no bolt in it' },
];

/** What to do now. Common practice, no source. */
export const ADVICE: Readonly<Record<Trouble, readonly string[]>> = {
  stuck: ['Leave it for now: penetrating oil, time, heat. Go on with the others.'],
  rounded: ['Leave it for now. A six-point socket that is driven on, or grips, before the drill.'],
  sheared: [
    'What is left holds nothing: the piece can come off over it, and the rest can be got out then.',
  ],
  stud: ['Keep stud and nut together. The stud goes back into its own hole first.'],
  pulled: [
    'Turn no further: it holds nothing, and more turns take the rest of the thread.',
    'Go on with the others. The piece is not tight until this hole is mended.',
  ],
  empty: ['Noted as found empty. Was it always so? The piece may have been apart before.'],
};
