/** Screens that show what is known, and what is printed and not so: reached by keys. */
import type { Opening } from '../../../src/screens/base/start.ts';
import { Bench } from '../../job/bench.ts';
import { LEFT_COVER } from '../covers.ts';
import { Desk } from '../desk.ts';
import { WRENCHES } from '../more-screens.ts';
import { coverIn, coverOff, LATER } from './known-desk.ts';

type Look = Partial<Omit<Opening, 'on'>> & { on?: Opening['on'] };

const PIECE = 'alternator';

/** The same bench with a few things that are printed and not so. */
function corrected(bench: Bench): Bench {
  const piece = PIECE;
  bench.mark({ do: 'correct', piece, what: 'torque', truth: '8 N·m, bulletin 12' });
  bench.mark({
    do: 'correct',
    piece,
    what: 'joint',
    truth: 'new gasket, oiled; dowels at 3 and 9',
  });
  bench.mark({ do: 'correct', piece, what: 'caution', truth: 'No magnet in this one. It drops.' });
  bench.mark({ do: 'correct', piece, hole: '7', what: 'note', truth: 'blind' });
  bench.mark({ do: 'correct', task: 'play', what: 'limit', truth: '25..35 mm, sticker' });
  bench.mark({ do: 'correct', task: 'weep', what: 'limit', truth: 'a damp edge is normal' });
  return bench;
}

function task(bench: Bench, here: string, look: Look): Desk {
  const desk = new Desk(bench, look);
  desk.state = { ...desk.state, view: { screen: 'job', here } };
  return desk.press('go');
}

const piece = (bench: Bench, look: Look, keys = '', key = PIECE) =>
  new Desk(bench, look, WRENCHES).open(key).press(keys);

function failed(): Bench {
  const bench = corrected(coverIn(['snug', 'full']));
  bench.mark({ do: 'done', task: 'weep', result: 'failed', says: 'a drop at 3' });
  return bench;
}

export const KNOWN: Record<string, (look: Look) => Desk> = {
  known: (look) => piece(new Bench(LEFT_COVER), look, 'k'),
  'known, a hose': (look) => piece(new Bench(LEFT_COVER), look, 'k down down down', 'hose'),
  'known, not as printed': (look) =>
    piece(coverOff(), look, 'k down c ctrl-u').type('8 N·m, bulletin 12').press('enter'),
  'known, which is not so': (look) => piece(new Bench(LEFT_COVER), look, 'c'),
  'known, a task': (look) => task(corrected(coverOff()), ':play', look).press('k'),
  'what is true': (look) => piece(corrected(coverIn(['snug'])), look, 'c'),
  'what it comes with': (look) =>
    piece(new Bench(LEFT_COVER), look, 'k down go', 'hose').type('alternater').press('enter'),
  'look, not as printed': (look) => piece(corrected(coverOff()), look),
  'look at a hole, not as printed': (look) => piece(corrected(coverOff()), look, '7'),
  'read, not as printed': (look) =>
    piece(new Bench(LEFT_COVER), look, 'go c ctrl-u', 'gear-lever')
      .type('two dots, the outer one')
      .press('enter'),
  'tight, not as printed': (look) => piece(corrected(coverIn(['snug'])), look),
  'gate, not as printed': (look) => piece(corrected(coverOff()), look, 'go go'),
  'task, not as printed': (look) => task(corrected(coverOff()), ':play', look),
  'tests, not as printed': (look) => new Desk(corrected(coverOff()), look).press('t'),
  'note, not as printed': (look) => new Desk(corrected(coverOff()), { ...look, now: LATER }),
  'round, not as printed': (look) => task(failed(), ':weep', look).press('go'),
};
