/**
 * The sorts of things that are looked at again once they were disturbed, one row each: how one is known, what is tested
 * afterwards, what is looked at before the start. Common practice of the trade, no source; what the maker says goes first.
 */
import { type OneOf, oneOf } from '../../model/one-of.ts';

export interface TestRule {
  /** Last word of the test's name. */
  key: string;
  say: string;
  when: string | null;
  /** A test of the file that says one of these about the piece stands in for it. */
  covers: RegExp;
}

interface SortRow {
  /** Known by these words of its name; null: by what is dangerous about it, which has the same name. */
  words: OneOf | null;
  test: TestRule;
  /** A control: how it must be before the engine runs, and what slides over it has one position only. */
  control: string | null;
}

const ROWS = {
  cover: {
    words: oneOf('cover|lid|sump|pan|case|housing'),
    test: {
      key: 'weeps',
      say: 'weeps when hot?',
      when: 'hot',
      covers: /weep|leak|oil|drop|drip/i,
    },
    control: null,
  },
  hose: {
    words: oneOf('(?:hose|pipe|tube|line|union)s?'),
    test: {
      key: 'leaks',
      say: 'leaks under pressure?',
      when: 'under pressure',
      covers: /leak|drop|drip|pressure/i,
    },
    control: null,
  },
  cable: {
    words: oneOf('cables?'),
    test: { key: 'play', say: 'play at both locks?', when: null, covers: /play|slack|lock/i },
    control: 'free, with its play, at both locks',
  },
  lever: {
    words: oneOf('lever|pedal|linkage'),
    test: {
      key: 'moves',
      say: 'moves free and comes back?',
      when: null,
      covers: /free|play|move/i,
    },
    control: 'moves free and comes back',
  },
  switch: {
    words: oneOf('switch|switches|lamp|light|lights|bulb'),
    test: {
      key: 'lights',
      say: 'switch and light work?',
      when: null,
      covers: /light|lamp|switch/i,
    },
    control: null,
  },
  fuel: {
    words: null,
    test: {
      key: 'smell',
      say: 'smell or drop of fuel?',
      when: 'fuel on',
      covers: /smell|leak|drop|fuel/i,
    },
    control: null,
  },
  wiring: {
    words: oneOf('wire|wires|wiring|loom|harness|connectors?|leads?|coil'),
    test: {
      key: 'works',
      say: 'what it feeds works?',
      when: null,
      covers: /work|function|spark|charge|light/i,
    },
    control: null,
  },
  exhaust: {
    words: oneOf('exhaust|silencer|muffler|manifold|downpipe'),
    test: { key: 'blows', say: 'blows at the joint?', when: 'running', covers: /blow|exhaust/i },
    control: null,
  },
  brake: {
    words: null,
    test: {
      key: 'holds',
      say: 'firm, and holds at a walk?',
      when: null,
      covers: /brake|firm|hold/i,
    },
    control: null,
  },
  wheel: {
    words: null,
    test: {
      key: 'spins',
      say: 'spins free, rocks without play, its nut tight and locked?',
      when: null,
      covers: /spin|rock|play|bearing|axle|nut/i,
    },
    control: null,
  },
  steering: {
    words: null,
    test: {
      key: 'turns',
      say: 'free from lock to lock, no play?',
      when: null,
      covers: /lock|play|turn/i,
    },
    control: null,
  },
} as const satisfies Readonly<Record<string, SortRow>>;

export type Sort = keyof typeof ROWS;
type With<Has> = { [S in Sort]: (typeof ROWS)[S] extends Has ? S : never }[Sort];
/** Known by what is dangerous about it. */
export type CareSort = With<{ words: null }>;
/** Controls. */
export type Control = With<{ control: string }>;

export const SORTS = Object.keys(ROWS) as readonly Sort[];

export function sortRow(sort: Sort): SortRow {
  return ROWS[sort];
}

export function isControl(sort: Sort): sort is Control {
  return ROWS[sort].control !== null;
}
