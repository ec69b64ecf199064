import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { GRINDER } from '../covers.ts';
import { Desk } from '../desk.ts';
import { inAgain, off, tightening, WRENCHES } from '../more-screens.ts';

/** Words of the frame with line breaks undone. */
const said = (desk: Desk) => desk.frame.replace(/\s+/g, ' ');

describe('a torque on the wrenches of this bench', () => {
  it('is said as printed, turned into what the wrench reads, and in its steps', () => {
    const desk = tightening('guard', ['snug']);
    expect(desk.frame).toContain('tight, pass 2 of 3: full, 95 lbf·in');
    expect(desk.frame).toContain('95 lbf·in as printed → set 10.7 N·m');
    expect(desk.frame).toContain('set 10.5 N·m on the small wrench, in its steps of 0.5');
  });

  it('is said for each hole where they differ, and never one for all', () => {
    const bench = new Bench(`putback: 1
job: Wheel
bolts: {A: M14x160, P: M6x30}
pieces: {axle: {bolts: A P, torque: "40 lbf·ft, p. 88", holes: {2: {torque: 80 lbf·in}}}}
diary:
`);
    for (const what of ['out', 'off'] as const) bench.mark({ do: what, piece: 'axle' });
    for (const kind of ['A', 'P']) bench.mark({ do: 'in', piece: 'axle', hand: { kind } });
    for (let n = 0; n < 4 && bench.piece('axle').where !== 'tight'; n += 1)
      bench.mark({ do: 'tight', piece: 'axle', because: 'seen' });
    expect(said(new Desk(bench).open('axle'))).toContain(
      'All 2 are tight: 1 at 40 lbf·ft, p. 88; 2 at 80 lbf·in.',
    );
  });

  it('has beside it that it is the most, what is on the thread, and that the bolts are new', () => {
    const bench = new Bench(`putback: 1
job: Wheel
bolts: {P: M6x30}
pieces: {lid: {bolts: P P, torque: "max 10 N·m, oiled threads, new bolts, manual 4-3"}}
diary:
`);
    for (const what of ['out', 'off'] as const) bench.mark({ do: what, piece: 'lid' });
    bench.mark({ do: 'in', piece: 'lid', hand: { kind: 'P' }, because: 'none to be had' });
    bench.mark({ do: 'tight', piece: 'lid', pass: 'snug', because: 'none to be had' });
    const desk = new Desk(bench).open('lid');
    expect(said(desk)).toContain('full, 10 N·m');
    expect(said(desk)).toContain('(no more than that, oiled threads, new bolts, manual 4-3)');
    expect(said(desk)).toContain('P is never used twice');
  });

  it('is only what to set where the wrench reads as the manual prints', () => {
    const desk = tightening('hub', ['snug']).press('1');
    expect(desk.frame).toContain('set 10 on the small wrench');
    expect(desk.frame).not.toContain('as printed');
  });

  it('says which end of which wrench it is off', () => {
    const desk = tightening('yoke', ['snug', 'part']);
    expect(said(desk)).toContain(
      'Off the top of the small wrench. Off the bottom of the big wrench.',
    );
  });

  it('is said under the map where the head has no room for it', () => {
    const desk = tightening('guard', ['snug'], { columns: 60, rows: 16 });
    expect(desk.rows[1]?.trim()).toBe('(manual 4-3)');
    expect(said(desk)).toContain('set 10.5 N·m on the small wrench, in its steps of 0.5');
  });

  it('cannot be steered by the name of a wrench', () => {
    const [small] = WRENCHES;
    const name = 'a\x1b[31m\u202eb';
    const evil = small ? [{ ...small, name }] : [];
    const desk = new Desk(inAgain('hub', ['snug']), {}, evil).open('hub').press('2');
    expect(desk.frame).toContain('set 8 on the a');
    expect(desk.frame).not.toMatch(/[\x1b\u202e]/);
  });

  it('is turned into N·m on a bench without wrenches, and nothing is to be set', () => {
    const desk = new Desk(inAgain('guard', ['snug'])).open('guard').press('go');
    expect(desk.frame).toContain('95 lbf·in as printed → set 10.7 N·m');
    expect(desk.frame).not.toContain('wrench');
  });

  it('is the hole’s own where it has one, and that is what the diary notes as set', () => {
    const desk = tightening('hub', ['snug']).press('2');
    expect(desk.frame).toContain('full, 8 N·m');
    expect(desk.frame).toContain('(manual 4-9)');
    expect(desk.frame).toContain('set 8 on the small wrench');
    desk.press('go');
    expect(desk.bench.entries.at(-1)).toMatchObject({ hole: ['2'], set: '8 N·m' });
    desk.press('1 go');
    expect(desk.bench.entries.at(-1)).toMatchObject({ hole: ['1'], set: '10 N·m' });
  });

  it('is noted as the scale of the wrench has it, with the printed text beside it', () => {
    const desk = tightening('guard', ['snug']).press('go');
    expect(desk.bench.entries.at(-1)).toMatchObject({
      hole: ['1'],
      set: '10.5 N·m',
      printed: '95 lbf·in, manual 4-3',
    });
    const none = new Desk(inAgain('guard', ['snug'])).open('guard').press('go go');
    expect(none.bench.entries.at(-1)).toMatchObject({ set: '95 lbf·in' });
  });

  it('is not said in a pass without one', () => {
    const desk = tightening('guard');
    expect(desk.frame).toContain('pass 1 of 3: snug');
    expect(desk.frame).not.toMatch(/wrench|lbf|threadlocker/);
  });
});

describe('what is said beside a torque', () => {
  it('names threadlocker and oil where joint or note do: words and a range, no figure to set', () => {
    expect(said(tightening('guard', ['snug']))).toMatch(
      /With threadlocker the same torque pulls 1\.0 to 1\.7 times as hard as dry\. .*nothing here is a figure to set\./,
    );
    const hub = tightening('hub', ['snug']);
    expect(said(hub.press('3'))).toContain('With oil the same torque');
    expect(said(hub.press('1'))).not.toContain('With oil');
  });

  it('takes an oil passage for no oil on the thread', () => {
    const text = GRINDER.replace('oil the threads', 'oil passage');
    const desk = new Desk(inAgain('hub', ['snug'], text)).open('hub').press('go 3');
    expect(desk.frame).toContain('3: oil passage.');
    expect(desk.frame).not.toContain('With oil');
  });

  it('says which bolts are never used twice, coming out, going in and tightening', () => {
    const once = 'T is never used twice: stretched or coated, it needs a new one.';
    expect(tightening('yoke').frame).toContain(once);
    expect(tightening('guard').frame).not.toContain('twice');
    const bench = new Bench(GRINDER);
    bench.mark({ do: 'out', piece: 'yoke' });
    expect(new Desk(bench).open('yoke').frame).toContain(once);
    const desk = new Desk(off('yoke')).open('yoke').press('go go t');
    expect(desk.step).toBe('on');
    expect(desk.frame).toContain(once);
  });

  it('asks why an old one goes back in, and not again for the others', () => {
    const desk = new Desk(off('yoke')).open('yoke').press('go go t 1 go');
    expect(desk.step).toBe('stop');
    expect(desk.done).not.toContain('ring');
    expect(said(desk)).toContain('1: T is never used twice, and no new one is noted as here');
    desk.press('w').type('new ones').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'in', because: 'new ones' });
    desk.press('go');
    expect(desk.bench.states('yoke')).toMatch(/^in in/);
  });

  it('says in one sentence what is odd about a figure, and that the maker goes first', () => {
    expect(said(tightening('tag', ['snug']))).toContain(
      "70 N·m would break the bolt: 10-32 UNF 8.8 (assumed) yields at 5.05 to 8.56 N·m. The maker's figure goes first: look it up again.",
    );
  });

  it('stops before it is turned: nothing is to be set, far or near, until somebody gave a reason', () => {
    const desk = tightening('tag', ['snug']);
    expect(said(desk)).toContain('STOP before it is turned. 1: 70 N·m would break the bolt');
    expect(desk.frame).not.toContain('set 70');
    expect(desk.rows.at(-1)).toContain('Space why it stops');
    expect(said(desk.press('f'))).toContain('STOP before it is turned.');
    desk.press('f space w').type('a dummy').press('enter');
    expect(desk.frame).toContain('set 70 on the big wrench');
  });

  it('is STOP before the first bolt, and a reason lets it through for the whole pass', () => {
    const desk = tightening('tag', ['snug']).press('go');
    expect(desk.step).toBe('stop');
    expect(desk.frame).toContain('STOP');
    expect(said(desk)).toContain('70 N·m would break the bolt');
    expect(desk.done).toContain('ring');
    desk.press('w').type('a dummy').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'tight', because: 'a dummy' });
    desk.press('go');
    expect(desk.bench.states('tag')).toBe('tight tight');
  });

  it('stands on the page of the piece and of the hole before anything is turned', () => {
    const piece = tightening('tag', ['snug']).press('escape');
    expect(said(piece)).toContain('STOP. 1: 70 N·m would break the bolt');
    expect(said(piece.press('1'))).toContain('STOP. 70 N·m would break the bolt');
  });

  it('is silent about the trade’s own 10 N·m on an unmarked M6', () => {
    const desk = tightening('hub', ['snug']);
    expect(desk.frame).not.toMatch(/stands|goes first|assumed/);
  });

  it('never shows what strips the thread', () => {
    for (const piece of ['guard', 'yoke', 'lid', 'cap', 'plate', 'tag', 'hub']) {
      const first = tightening(piece).bench.piece(piece);
      expect(first.holes.length).toBeGreaterThan(0);
      expect(tightening(piece, ['snug']).frame).not.toMatch(/strip|shear|plenty|\bkN\b/i);
    }
  });
});

describe('a piece without a printed torque', () => {
  const BRAKE = `putback: 1
job: Pads
pieces:
  caliper: {name: Caliper, care: brake, bolts: S S}
bolts: {S: M6x40}
diary:
`;

  it('is said not to be known in the pass, where all is tight, and what is left', () => {
    const unknown = "orque not known: the manual's figure.";
    const desk = new Desk(inAgain('caliper', [], BRAKE)).open('caliper').press('go');
    expect(desk.step).toBe('tight');
    expect(desk.frame).not.toContain(unknown);
    desk.press('go go');
    expect(desk.frame).toContain('pass 2 of 2: full');
    expect(desk.frame).toContain(`T${unknown}`);
    desk.press('go go');
    expect(said(desk)).toContain(`Caliper: t${unknown} Look it up, and go round with it.`);
    desk.press('escape');
    expect(said(desk)).toContain(`All 2 are tight. T${unknown}`);
    desk.press('escape');
    expect(said(desk)).toContain('! torque not known');
    expect(said(desk)).toContain(`Caliper: t${unknown}`);
    expect(said(desk)).not.toContain('Nothing is next');
  });
});

describe('how the piece is gone round', () => {
  it('says how far it is to the next hole, and draws a line to it', () => {
    const desk = tightening('guard', ['snug']);
    expect(desk.frame).toContain('Next: 1, to begin with.');
    desk.press('go');
    expect(desk.frame).toContain('Next: 4, right across.');
    const dots = desk.rows.slice(2, 17).filter((r) => /^ +\.( |$)/.test(r));
    expect(dots.length).toBeGreaterThan(5);
    desk.press('go');
    expect(desk.frame).toMatch(
      /Next: \d, (next to it|two on|two back), (clockwise|anticlockwise)\./,
    );
  });

  it('draws no line to a hole that is out of order', () => {
    const desk = tightening('guard', ['snug']).press('go 2');
    expect(desk.frame).toContain('2. In order it would be 4.');
    expect(desk.rows.slice(2, 17).filter((r) => /^ +\.( |$)/.test(r))).toEqual([]);
  });

  it('asks for the maker’s list where the maker alone can order, and marks its own as such', () => {
    const asks = "Not the maker's order: find the list, write it as sequence: of this piece.";
    expect(said(tightening('yoke'))).toContain(asks);
    expect(said(tightening('lid'))).toContain(asks);
    expect(said(tightening('cap'))).not.toContain(asks);
    expect(said(tightening('guard'))).not.toContain(asks);
  });

  it('sends one to the manual and a licensed mechanic for steering, at the wrench and before', () => {
    const first =
      "The maker's manual goes first; for brakes, steering and suspension a licensed mechanic does.";
    expect(said(tightening('yoke'))).toContain(first);
    expect(said(tightening('lid'))).not.toContain('licensed');
    const desk = new Desk(new Bench(GRINDER)).open('yoke').press('go');
    expect(desk.screen).toBe('gate');
    expect(said(desk)).toContain(first);
    desk.press('a');
    expect(desk.step).toBe('off');
    expect(said(desk)).toContain("Not the maker's order: its list, from the end, goes first.");
  });

  it('takes a spring half a turn each, off and on', () => {
    expect(said(tightening('plate'))).toContain(
      'Half a turn each, all round, so that the spring is taken up evenly.',
    );
    const desk = new Desk(new Bench(GRINDER)).open('plate').press('go go go go');
    expect(desk.step).toBe('off');
    expect(desk.frame).toContain('off, 2 of 4 out');
    expect(said(desk)).toContain('Half a turn each, all round, until the spring is slack.');
  });

  it('lets a large piece go a quarter turn all round, before the first bolt is out', () => {
    const desk = new Desk(new Bench(GRINDER)).open('lid').press('go go');
    expect(desk.step).toBe('off');
    expect(said(desk)).toContain('A quarter turn each first, all round.');
    expect(said(desk)).toContain('leave 1 until last, so that the piece hangs');
    desk.press('go');
    expect(said(desk)).not.toContain('quarter turn');
  });

  it('stops at a bolt that keeps turning in the final pass', () => {
    const desk = tightening('lid', ['snug', 'full']);
    expect(desk.frame).toContain('pass 3 of 3: final');
    expect(desk.frame).toContain(
      'Once round: a bolt that keeps turning is STOP, not another round.',
    );
    expect(desk.frame).toContain('Space holds   ! keeps turning');
    desk.press('- enter');
    expect(desk.step).toBe('advice');
    expect(desk.frame).toContain('STOP');
    expect(desk.done).toContain('ring');
  });

  it('goes by degrees in an angle pass, and says what becomes of such bolts', () => {
    const desk = tightening('cap', ['snug', 'full']);
    expect(desk.frame).toContain('pass 3 of 3: angle, 90°');
    expect(said(desk)).toContain(
      '90° further each, by angle. Such bolts are often used once. Never click them again afterwards.',
    );
    expect(desk.frame).not.toContain('wrench');
    expect(desk.rows.at(-1)).toContain('Space turned 90°');
  });

  it('names its key by what the hand feels', () => {
    expect(tightening('guard').rows.at(-1)).toContain('Space snug');
    expect(tightening('guard', ['snug']).rows.at(-1)).toContain('Space clicked');
  });
});

describe('a left-hand thread', () => {
  const turns = 'Left-hand thread: clockwise undoes it, to the left tightens it.';

  it('is said going off, going in and tightening, wherever its hole is the one to turn', () => {
    const desk = new Desk(new Bench(GRINDER)).open('guard').press('go a 2');
    expect(desk.step).toBe('off');
    expect(desk.frame).not.toContain(turns);
    expect(desk.press('3').frame).toContain(turns);
    const on = new Desk(off('guard')).open('guard').press('go go go r');
    expect(on.step).toBe('on');
    expect(on.frame).toContain(turns);
    expect(on.press('s').frame).not.toContain(turns);
    const tight = tightening('guard').press('3');
    expect(tight.frame).toContain(turns);
    expect(tight.press('2').frame).not.toContain(turns);
  });
});

describe('threads that look alike', () => {
  const first = '10-32 UNF is 4.83 mm, pitch 0.794; M5x0.8 is 5 mm, pitch 0.8.';

  it('are named once a sitting, where one is asked what is in the hand', () => {
    const desk = new Desk(off('tag')).open('tag').press('go');
    expect(desk.step).toBe('on');
    expect(said(desk)).toContain(first);
    desk.press('escape go');
    expect(desk.step).toBe('on');
    expect(said(desk)).not.toContain(first);
  });

  it('are not named at a piece that takes neither', () => {
    const desk = new Desk(off('hub')).open('hub').press('go');
    expect(desk.step).toBe('on');
    expect(said(desk)).not.toContain('One starts in the other');
  });
});

it('the wrenches of the bench are as its settings have them', () => {
  expect(WRENCHES.map((w) => [w.name, w.from, w.to, w.step])).toEqual([
    ['small', 2, 12, 0.5],
    ['big', 40, 200, 1],
  ]);
});

describe('a torque that says two things', () => {
  const cover = (torque: string) => {
    const text = `putback: 1\njob: x\nbolts: {S: M6x25}\npieces: {cover: {bolts: S S, torque: "${torque}"}}\n`;
    const desk = new Desk(inAgain('cover', ['snug'], text)).open('cover');
    return desk.step === 'tight' ? desk : desk.press('go');
  };

  it('in two units is said where the wrench is set', () => {
    expect(said(cover('9 N·m (25 lbf·ft)'))).toContain(
      'Printed 9 N·m (25 lbf·ft): 25 lbf·ft is not the same. One of the two is wrong: look it up first.',
    );
    expect(said(cover('9 N·m (6.6 lbf·ft)'))).not.toContain('not the same');
  });

  it('of which nobody read whose is which has no figure to set', () => {
    const desk = cover('9 N·m upper, 8 N·m lower');
    expect(desk.frame).toContain('printed, 9 N·m upper, 8 N·m lower');
    expect(desk.frame).not.toContain('set 8');
    desk.press('1 go');
    expect(desk.bench.entries.at(-1)).not.toHaveProperty('set');
  });
});
