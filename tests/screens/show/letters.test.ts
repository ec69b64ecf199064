/** A letter means one thing in the hand, on whichever screen of a job one is. */
import { describe, expect, it } from 'vitest';
import { KEYS_BY_SCREEN } from '../../../src/screens/show/screens.ts';

/** What each letter means, and the keys that are just this. */
const MEANS: Readonly<Record<string, { means: string; ids: readonly string[] }>> = {
  a: { means: 'all of them', ids: ['all', 'all-out', 'all-as-before', 'all-seen'] },
  b: { means: 'what is to buy', ids: ['parts', 'as-buy'] },
  c: { means: 'what is printed is not so', ids: ['not-so', 'other-figures', 'find'] },
  d: { means: 'how high the heads stand', ids: ['heights'] },
  e: { means: 'what earlier jobs know', ids: ['last'] },
  f: { means: 'far, to be read from two metres', ids: ['far'] },
  g: { means: 'what is to be seen to here', ids: ['gates', 'as-item'] },
  h: { means: 'the list of keys', ids: ['keys'] },
  i: { means: 'what goes inside', ids: ['inside', 'covered'] },
  j: { means: 'keep it for the next time', ids: ['keep-last'] },
  k: {
    means: 'what is known: by the file, of the fault',
    ids: ['known', 'trace', 'file', 'as-check'],
  },
  l: {
    means: 'what is left, left over, left for later',
    ids: ['left', 'later', 'leave-as-is', 'reach-leave'],
  },
  m: { means: 'how many minutes', ids: ['within'] },
  n: { means: 'write it down', ids: ['note', 'note-over', 'as-note', 'trace-add', 'superseded'] },
  o: { means: 'off', ids: ['comes-off', 'take-off'] },
  p: { means: 'put it back on', ids: ['put-on'] },
  q: { means: 'leave', ids: ['quit', 'quit-unsaved'] },
  r: {
    means: 'type it: the row, the reading, in words of your own',
    ids: ['row', 'correct', 'reading', 'task-said', 'look-read', 'decided-said'],
  },
  s: { means: 'what to do before the start', ids: ['start-gate'] },
  t: { means: 'tighten', ids: ['tighten'] },
  u: { means: 'not this one', ids: ['not-this-one'] },
  v: { means: 'out of the way', ids: ['aside'] },
  w: { means: 'all the same, and why', ids: ['past', 'force', 'pry'] },
  x: { means: 'it is out of it: out again, struck', ids: ['cleared', 'strike'] },
  y: { means: 'redo', ids: ['redo'] },
  z: { means: 'draw where the holes lie', ids: ['draw'] },
};

/** Letters that are read on the page itself: it asks one question and shows each answer with its letter. */
const ANSWER = 'an answer: it stands with its letter where the question is asked';
/** The first letter of what it opens; nothing is marked by it, and Esc is the way back. */
const OPENS = 'only opens a page, or asks; the key of that letter is not on this screen';

const OTHERWISE: Readonly<Record<string, string>> = {
  // What a line is that was typed.
  'as-do': ANSWER,
  'as-test': ANSWER,
  'as-adjust': ANSWER,
  'as-wait': ANSWER,
  'as-decide': ANSWER,
  'as-caution': ANSWER,
  'as-tip': ANSWER,
  'as-suspect': ANSWER,
  'as-torque': ANSWER,
  'no-kind': 'says of a letter that it does nothing here, and what would',
  // How the marked look came out.
  'look-good': ANSWER,
  'look-bad': ANSWER,
  'look-unclear': ANSWER,
  'put-right': ANSWER,
  // How far the marked part is.
  'part-here': ANSWER,
  'part-to-hand': ANSWER,
  'part-short': ANSWER,
  'part-wrong': ANSWER,
  // What is to become of what is within reach.
  'reach-renew': ANSWER,
  'reach-ask': ANSWER,
  'ask-owner': ANSWER,
  // What came of a test.
  'task-passed': ANSWER,
  // What is offered for the whole page.
  'take-over': ANSWER,
  yes: ANSWER,
  'changed-to-try': OPENS,
  'trace-starts': OPENS,
  'print-open': OPENS,
  'while-open': OPENS,
  'weigh-it': OPENS,
  where: OPENS,
  paper: OPENS,
  tests: OPENS,
  advice:
    'how it is mended, where the hole that is pointed at is in trouble; the list of keys has ? there',
  'stuck-out': 'off, of the lit bolt: the piece itself cannot come off there',
  'as-it-was': OPENS,
  due: 'of the bench, where no piece is open',
  older: 'of the bench, where no piece is open',
  mended: 'only where the hole that is pointed at is in trouble, where the foot names it',
};

interface Row {
  letter: string;
  id: string;
}
const ROWS: readonly Row[] = KEYS_BY_SCREEN.flatMap((keys) =>
  keys.flatMap(({ id, presses }) =>
    presses.filter((press) => /^[a-z]$/.test(press)).map((letter) => ({ letter, id })),
  ),
);

describe('a letter in the hand', () => {
  it('means one thing on every screen, or its key says why not', () => {
    const odd = ROWS.filter(
      ({ letter, id }) => !MEANS[letter]?.ids.includes(id) && OTHERWISE[id] === undefined,
    );
    expect(odd).toEqual([]);
  });

  it('no exception and no meaning is left over from a key that is gone', () => {
    const ids = new Set(ROWS.map(({ id }) => id));
    const named = [...Object.values(MEANS).flatMap((m) => m.ids), ...Object.keys(OTHERWISE)];
    expect(named.filter((id) => !ids.has(id))).toEqual([]);
    for (const [letter, { ids: own }] of Object.entries(MEANS))
      for (const id of own) expect(ROWS).toContainEqual({ letter, id });
  });

  it('a and f are excepted nowhere', () => {
    const of = (letter: string) => ROWS.filter((r) => r.letter === letter).map((r) => r.id);
    expect(of('a').filter((id) => !MEANS.a?.ids.includes(id))).toEqual([]);
    expect(of('f').filter((id) => id !== 'far' && id !== 'as-suspect')).toEqual([]);
  });
});
