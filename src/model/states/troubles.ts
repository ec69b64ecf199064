/**
 * What can be wrong with a hole or its bolt: one row each, with everything that follows from it. To add a trouble, add
 * its row: files, commands, screens, trays and gates have it then.
 */

interface Row {
  /** As one says it of a hole: `9 head rounded`. */
  said: string;
  /** By which it is chosen, and how it is offered. */
  letter: string;
  offered: string;
  /** What to do now; the first sentence is said at once. Common practice, no source. */
  advice: readonly string[];
  /** What it says of the bolt: it is in the hole and holds, nothing that holds is; null: as it was. */
  bolt: 'in' | 'gone' | null;
  /** Over with the bolt: it was about getting it out, or is about a hole without one. */
  overWhenOut: boolean;
  overWhenIn: boolean;
  /** What ends it, where nobody mends it: said to whoever says that it is mended. Null: a thread, or a stud, is mended. */
  ends: string | null;
  /** No bolt goes in until it is mended. */
  barsBolt: boolean;
  /** Once out, its bolt lies in the tray as a whole bolt. */
  inTray: boolean;
  /** Before the first start: STOP, or said loudly; null: nothing of its own. */
  atStart: 'stops' | 'loud' | null;
  /** As what it is told to whoever does this again; null: it is not. */
  nextTime: 'stuck' | 'broke' | null;
}

const ROWS = {
  stuck: {
    said: 'stuck',
    letter: 's',
    offered: 'stuck, will not come',
    advice: ['Leave it for now: penetrating oil, time, heat. Go on with the others.'],
    bolt: 'in',
    overWhenOut: true,
    overWhenIn: true,
    ends: 'Its bolt is in: it is over once that is out, and said to be out.',
    barsBolt: false,
    inTray: true,
    atStart: null,
    nextTime: 'stuck',
  },
  rounded: {
    said: 'head rounded',
    letter: 'r',
    offered: 'head rounded',
    advice: ['Leave it for now. A six-point socket that is driven on, or grips, before the drill.'],
    bolt: 'in',
    overWhenOut: true,
    overWhenIn: true,
    ends: 'Its bolt is in: it is over once that is out, and said to be out.',
    barsBolt: false,
    inTray: true,
    atStart: null,
    nextTime: 'broke',
  },
  sheared: {
    said: 'sheared off',
    letter: 'b',
    offered: 'broken off: sheared',
    advice: [
      'What is left holds nothing: the piece can come off over it, and the rest can be got out then.',
    ],
    bolt: 'gone',
    overWhenOut: false,
    overWhenIn: false,
    ends: null,
    barsBolt: true,
    inTray: false,
    atStart: 'loud',
    nextTime: 'broke',
  },
  stud: {
    said: 'stud came out',
    letter: 'd',
    offered: 'the stud came out with it',
    advice: ['Keep stud and nut together. The stud goes back into its own hole first.'],
    bolt: 'gone',
    overWhenOut: false,
    overWhenIn: true,
    ends: null,
    barsBolt: false,
    inTray: true,
    atStart: 'loud',
    nextTime: 'broke',
  },
  pulled: {
    said: 'thread pulled',
    letter: 'p',
    offered: 'thread pulled: turns without tightening',
    advice: [
      'Turn no further: it holds nothing, and more turns take the rest of the thread.',
      'Leave the others as they are: this hole is mended first, then all are gone round again from the first pass.',
    ],
    bolt: null,
    overWhenOut: false,
    overWhenIn: false,
    ends: null,
    barsBolt: true,
    inTray: true,
    atStart: 'stops',
    nextTime: 'broke',
  },
  empty: {
    said: 'was empty',
    letter: 'e',
    offered: 'empty: there was no bolt in it',
    advice: ['Noted as found empty. Was it always so? The piece may have been apart before.'],
    bolt: 'gone',
    overWhenOut: true,
    overWhenIn: true,
    ends: 'Nothing is broken in it: it is over once a bolt is in.',
    barsBolt: false,
    inTray: false,
    atStart: 'loud',
    nextTime: null,
  },
} as const satisfies Record<string, Row>;

export type Trouble = keyof typeof ROWS;

/** In the order in which they are offered. */
export const TROUBLES = Object.keys(ROWS) as Trouble[];

/** The row of a trouble. */
export function troubleOf(trouble: Trouble): Row {
  return ROWS[trouble];
}

export type HoleSays = Trouble | 'mended';
/** What `hole … STATE` can say: a trouble, or that it is mended. */
export const HOLE_STATES = [...TROUBLES, 'mended'] as unknown as readonly [HoleSays, ...HoleSays[]];
