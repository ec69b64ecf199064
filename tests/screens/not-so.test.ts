/** "Not so here" from wherever a figure, a caution or a step is shown: one key, and back there with both. */
import { describe, expect, it } from 'vitest';
import { openOf } from '../../src/screens/show/screens.ts';
import { Bench } from '../job/bench.ts';
import { GRINDER, LEFT_COVER } from './covers.ts';
import { Desk } from './desk.ts';
import { everyScreen } from './every-screen.ts';
import { coverIn, coverOff, said, TASKS } from './known/known-desk.ts';
import { inAgain, WRENCHES } from './more-screens.ts';

const last = (desk: Desk) => desk.bench.entries.at(-1);
const instead = (desk: Desk, text: string) => desk.press('ctrl-u').type(text).press('enter');

/** A task, opened from the job. */
function task(desk: Desk, key: string): Desk {
  desk.state = { ...desk.state, view: { screen: 'job', here: `:${key}` } };
  return desk.press('go');
}

it('is the same key everywhere', () => {
  const found = everyScreen().flatMap(({ place, state }) => {
    const key = openOf(state)
      .keys()
      .find((k) => k.id === 'not-so');
    return key ? [{ place, presses: key.presses }] : [];
  });
  expect(new Set(found.map((f) => f.place))).toEqual(
    new Set(['look', 'read', 'tight', 'gate', 'task', 'tests', 'known']),
  );
  expect(new Set(found.flatMap((f) => f.presses))).toEqual(new Set(['c']));
});

describe('on the tightening page', () => {
  const cover = () => new Desk(coverIn(['snug']), {}, WRENCHES).open('alternator');

  it('the torque: straight to the field, and the wrench line follows the truth', () => {
    const desk = cover();
    expect(desk.frame).toContain('set 10 on the small wrench');
    desk.press('c');
    expect(desk.frame).toContain('> 10 N·m, manual 2-17');
    instead(desk, '8 N·m, bulletin 12');
    expect(desk.screen).toBe('tight');
    expect(desk.frame).toContain('full, 8 N·m');
    expect(desk.frame).toContain('(bulletin 12)   set 8 on the small wrench');
    expect(said(desk)).toContain('8 N·m, bulletin 12. Not 10 N·m, manual 2-17, as printed.');
    desk.press('backspace');
    expect(desk.screen).toBe('tight');
    expect(desk.frame).toContain('set 10 on the small wrench');
    expect(desk.frame).not.toContain('bulletin 12. Not');
    desk.press('y');
    expect(desk.frame).toContain('set 8 on the small wrench');
  });

  it('the truth in its own unit: what is set is turned from it', () => {
    const desk = instead(cover().press('c'), '71 lbf·in, bulletin 12');
    expect(desk.frame).toContain('set 8 N·m on the small wrench');
    expect(said(desk)).not.toContain('71 lbf·in as printed');
  });

  it('no bolt counts as tight at the printed figure because of it, and none loses its pass', () => {
    const desk = instead(cover().press('c'), '8 N·m');
    desk.press('go');
    expect(last(desk)).toMatchObject({ verb: 'tight', value: 'full' });
    expect(desk.frame).toContain('1 of 11 done in this pass');
  });

  it('the lit hole’s own torque, where it has one', () => {
    const hub = () => new Desk(inAgain('hub', ['snug']), {}, WRENCHES).open('hub').press('2');
    expect(hub().press('c').frame).toContain('> 8 N·m, manual 4-9');
    const desk = instead(hub().press('c'), '9 N·m');
    expect(last(desk)).toMatchObject({ piece: 'hub', hole: ['2'], value: 'torque', says: '9 N·m' });
    expect(desk.frame).toContain('set 9 on the small wrench');
    expect(desk.press('1').frame).toContain('set 10 on the small wrench');
  });

  it('a pass with a figure of its own, and no other pass', () => {
    const text = GRINDER.replace(
      '"passes": [snug, full, final]',
      '"passes": [snug, part 4 N·m, full]',
    );
    const desk = new Desk(inAgain('lid', ['snug'], text), {}, WRENCHES).open('lid').press('c');
    expect(desk.frame).toContain('> part 4 N·m');
    instead(desk, 'part 5 N·m');
    expect(desk.frame).toContain('part, 5 N·m');
    expect(said(desk)).toContain('part 5 N·m. Not "part 4 N·m", as printed.');
  });

  it('where no torque is printed it can be written', () => {
    const desk = new Desk(inAgain('plate'), {}, WRENCHES).open('plate').press('go');
    desk.press('c');
    expect(desk.frame).toContain('Which torque is printed, and where?');
    desk.type('9 N·m, plate under the lid').press('enter');
    expect(desk.screen).toBe('tight');
    expect(desk.bench.piece('plate').spec.torque?.quantity?.value).toBe(9);
  });
});

describe('before a piece comes off or goes on', () => {
  it('one text: straight to the field, and back, showing both', () => {
    const desk = new Desk(new Bench(LEFT_COVER)).open('gear-lever').press('go');
    expect(desk.step).toBe('read');
    instead(desk.press('c'), 'dot one tooth to the left');
    expect(desk.step).toBe('read');
    expect(said(desk)).toContain(
      'dot one tooth to the left. Not "dot on the shaft in line with the split", as printed.',
    );
    desk.press('backspace');
    expect(desk.step).toBe('read');
    expect(desk.frame).toContain('Marks     dot on the shaft in line with the split\n');
  });

  it('several: the page with those first, the caution marked; kept, it is back where it was', () => {
    const text = LEFT_COVER.replace(
      'marks: dot on the shaft in line with the split',
      'marks: dot on the shaft, caution: {removal: Spring behind it.}',
    );
    const desk = new Desk(new Bench(text)).open('gear-lever').press('go c');
    expect(desk.frame).toContain('which is not so here?');
    expect(desk.frame).toMatch(/> Caution, off +Spring behind it\.\n {2}Marks +dot on the shaft/);
    instead(desk.press('enter'), 'No spring: a clip.');
    expect(desk.step).toBe('read');
    expect(said(desk)).toContain('No spring: a clip. Not "Spring behind it", as printed.');
  });

  it('left again, nothing is written and it is the same page', () => {
    const desk = new Desk(new Bench(LEFT_COVER)).open('gear-lever').press('go');
    const before = desk.frame;
    expect(desk.press('c escape').frame).toBe(before);
    expect(desk.bench.entries).toEqual([]);
  });
});

describe('at a gate', () => {
  const sealing = () => new Desk(coverOff()).open('alternator').press('go go');
  function mark(desk: Desk, text: string): Desk {
    const marked = () => desk.rows.some((r) => r.startsWith('> ') && r.includes(text));
    desk.press('up '.repeat(30));
    for (let i = 0; i < 30 && !marked(); i += 1) desk.press('down');
    expect(marked()).toBe(true);
    return desk;
  }

  it('a joint, a loose thing, a caution, the torque: straight to the field and back to the item', () => {
    const desk = mark(sealing(), 'Joint: new gasket, dry.');
    instead(desk.press('c'), 'new gasket, oiled; dowels at 2 and 8');
    expect(desk.screen).toBe('gate');
    expect(said(desk)).toContain(
      'Joint: new gasket, oiled. Not "new gasket, dry", as printed. Joint: dowels at 2 and 8.',
    );
    instead(mark(desk, '2 dowels').press('c'), '1 dowel');
    expect(said(desk)).toContain('1 dowel. Not 2 dowels, as printed.');
    instead(mark(desk, 'The magnet').press('c'), 'No magnet in it.');
    expect(said(desk)).toContain('No magnet in it. Not "The magnet pulls the cover in.');
    instead(mark(desk, 'Wrench set').press('c'), '8 N·m');
    expect(said(desk)).toContain('Wrench set for 8 N·m. Not 10 N·m, manual 2-17, as printed.');
    desk.press('backspace');
    expect(said(desk)).toContain('Wrench set for 10 N·m.');
  });

  it('what nobody printed has no such key', () => {
    const desk = mark(sealing(), 'Both faces clean');
    const before = desk.state.view;
    expect(desk.press('c').state.view).toBe(before);
    expect(desk.frame).toContain('c is no key here.');
  });

  it('every item stays whole on its page with both texts', () => {
    const bench = coverOff();
    const truth = `${'a very long joint '.repeat(20)}`.trim();
    bench.mark({ do: 'correct', piece: 'alternator', what: 'joint', truth });
    const desk = new Desk(bench).open('alternator').press('go go');
    let pages = '';
    for (let i = 0; i < 8 && desk.screen === 'gate'; i += 1) {
      pages += said(desk);
      if (desk.frame.includes('page 2 of 2')) break;
      desk.press('go');
    }
    expect(pages).toContain('dowels at 2 and 8", as printed.');
  });
});

describe('at a task and in the list of tests', () => {
  it('the limit is marked first; kept, it is back at the task with both', () => {
    const desk = task(new Desk(coverOff()), 'play').press('c');
    expect(desk.frame).toMatch(/> Limit +20\.\.30 mm/);
    instead(desk.press('enter'), '25..35 mm, sticker on the swing arm');
    expect(desk.screen).toBe('task');
    expect(said(desk)).toContain(
      'Limit 25..35 mm, sticker on the swing arm. Not 20..30 mm, as printed.',
    );
    desk.press('backspace');
    expect(desk.frame).toContain('Limit     20..30 mm');
  });

  it('in the list of the job it is the true one, and says that another is printed', () => {
    const text = TASKS.replace(', after: sprocket-cover on', '');
    const desk = task(new Desk(new Bench(text)), 'play').press('k down c');
    instead(desk, '25..35 mm').press('escape escape');
    expect(desk.frame).toContain('to adjust (25..35 mm, not as printed)');
    expect(task(desk, 'play').press('go').frame).toContain(
      'Limit: 25..35 mm. Not 20..30 mm, as printed.',
    );
  });

  it('in what comes next, struck where weight may be shown', () => {
    const text = TASKS.replace(', after: sprocket-cover on', '').replace('weep:', 'weeps:');
    const bench = coverIn(['snug', 'full'], text);
    for (const piece of ['sprocket-cover', 'gear-lever']) {
      const kind = piece === 'gear-lever' ? 'P' : 'S';
      bench.mark({ do: 'in', piece, hand: { kind } });
      for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece, pass });
    }
    bench.mark({ do: 'done', task: 'weeps', result: 'passed' });
    bench.mark({ do: 'correct', task: 'play', what: 'limit', truth: '25..35 mm' });
    const desk = new Desk(bench, { colour: true }).press('escape');
    const next = desk.rows.join(' ').replace(/\s+/g, ' ');
    expect(next).toContain('Next: Adjust: Chain slack (25..35 mm (not ');
    expect(next).toContain('\x1b[1;9m20..30 mm\x1b[0m');
  });

  it('the step itself', () => {
    const desk = task(new Desk(coverOff()), 'play').press('k');
    instead(desk.press('c'), 'Belt slack').press('escape');
    expect(desk.rows[0]).toContain('Belt slack');
    expect(said(desk)).toContain('Step Belt slack. Not "Chain slack", as printed.');
  });

  it('the marked test', () => {
    const desk = new Desk(coverOff()).press('t');
    for (let i = 0; i < 9 && !/> .*Five minutes/.test(desk.frame); i += 1) desk.press('down');
    instead(desk.press('c enter'), 'a damp edge is normal');
    expect(desk.screen).toBe('tests');
    expect(said(desk)).toContain(
      'Limit: a damp edge is normal. Not "no oil at the edge", as printed.',
    );
  });

  it('a test that nobody printed has no such key', () => {
    const desk = new Desk(coverOff()).press('t');
    for (let i = 0; i < 9 && /> .*(Five minutes|Chain)/.test(desk.frame); i += 1)
      desk.press('down');
    expect(desk.press('c').screen).toBe('tests');
  });

  it('a failed test shows it at the next round', () => {
    const bench = coverIn(['snug', 'full'], TASKS);
    bench.mark({ do: 'correct', piece: 'alternator', what: 'torque', truth: '8 N·m' });
    bench.mark({ do: 'done', task: 'weep', result: 'failed', says: 'a drop' });
    const desk = task(new Desk(bench), 'weep').press('go');
    expect(said(desk)).toContain(
      'Alternator cover, torque: 8 N·m. Not 10 N·m, manual 2-17, as printed.',
    );
  });
});

describe('on the piece', () => {
  it('several: all of it, the torque marked; then both stand under the picture', () => {
    const desk = new Desk(new Bench(LEFT_COVER)).open('alternator').press('c');
    expect(desk.frame).toMatch(/> Torque +10 N·m/);
    instead(desk.press('enter'), '8 N·m, bulletin 12');
    expect(desk.step).toBe('look');
    expect(said(desk)).toContain('8 N·m, bulletin 12. Not 10 N·m, manual 2-17, as printed.');
  });

  it('a hole’s only text: straight to the field', () => {
    const desk = new Desk(new Bench(LEFT_COVER)).open('alternator').press('7 c');
    expect(desk.frame).toContain('> oil passage');
    instead(desk, 'blind hole');
    expect(desk.step).toBe('look');
    expect(said(desk)).toContain('Blind hole. Not "oil passage", as printed.');
  });

  it('what falls out stands beside its print when the piece may come off', () => {
    const bench = new Bench(LEFT_COVER);
    const piece = 'alternator';
    bench.mark({ do: 'correct', piece, what: 'loose', printed: '2 dowels', truth: '1 dowel' });
    bench.mark({ do: 'out', piece });
    const desk = new Desk(bench).open(piece);
    expect(desk.screen).toBe('off-count');
    expect(said(desk)).toContain(
      'Falls out or stays in: 1 dowel and thrust washer stays on the shaft. Not 2 dowels, as printed.',
    );
  });

  it('tip and note stand beside their print while bolts come out', () => {
    const bench = new Bench(LEFT_COVER);
    const piece = 'alternator';
    bench.mark({ do: 'correct', piece, what: 'tip', truth: 'Bottom bolt last.' });
    bench.mark({ do: 'correct', piece, hole: '7', what: 'note', truth: 'blind' });
    const desk = new Desk(bench).open(piece).press('go 7');
    expect(said(desk)).toContain(
      'Tip: Bottom bolt last. Not "Top bolt last, so that the cover hangs", as printed.',
    );
    expect(said(desk)).toContain('7: blind. Not "oil passage", as printed.');
  });
});
