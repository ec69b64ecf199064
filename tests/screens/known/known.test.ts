import { describe, expect, it } from 'vitest';
import { asPrinted, textsIn } from '../../../src/model/said.ts';
import { Bench } from '../../job/bench.ts';
import { LEFT_COVER } from '../covers.ts';
import { Desk } from '../desk.ts';
import { coverOff, LATER, said } from './known-desk.ts';

const page = (piece: string, bench = new Bench(LEFT_COVER)) =>
  new Desk(bench).open(piece).press('k');
/** Down to the row with this label. */
function row(desk: Desk, label: string): Desk {
  for (let i = 0; i < 30 && !desk.frame.includes(`\n> ${label}`); i += 1) desk.press('down');
  expect(desk.frame).toContain(`\n> ${label}`);
  return desk;
}
const last = (desk: Desk) => desk.bench.entries.at(-1);

describe('what is known of a piece', () => {
  it('stands on one page, one key from the piece: what is over it, figures, cautions, holes', () => {
    const { frame } = page('alternator');
    for (const text of [
      'Under        Gear lever and Sprocket cover',
      'Torque       10 N·m, manual 2-17',
      'Into         cast aluminium',
      'Joint        new gasket, dry; dowels at 2 and 8',
      'Loose        2 dowels',
      '             thrust washer stays on the shaft',
      'Caution, on  The magnet pulls the cover in. Keep fingers off the edge.',
      'Tip, off     Top bolt last, so that the cover hangs.',
      '7: note      oil passage',
    ]) {
      expect(frame).toContain(text);
    }
    expect(frame).toMatch(/Order +9,? 2,? 11/);
  });

  it('says quietly what may be said and is not yet; no torque of a piece without bolts', () => {
    const { frame } = page('hose');
    for (const label of ['Under', 'Comes with', 'Bridges', 'Runs', 'Marks', 'Loose', 'Joint']) {
      expect(frame).toMatch(new RegExp(`\\n[> ] ${label} `));
    }
    expect(frame).not.toMatch(/\n[> ] (Torque|Order)/);
    expect(page('sprocket-cover').frame).toMatch(
      /Not said yet:[\s\S]*\n {2}Torque[\s\S]*\n {2}Order/,
    );
  });

  it('leads back to the piece', () => {
    expect(page('hose').press('escape').screen).toBe('look');
  });

  it('shows where the bolts lie, and what is special of a hole', () => {
    const text = LEFT_COVER.replace('7: {note: oil passage}', '7: {wet: true, group: inner}');
    const { frame } = page('alternator', coverOff(text));
    expect(frame).toMatch(/7: wet +opens into a liquid/);
    expect(frame).toMatch(/7: group +inner/);
    expect(frame).toMatch(/Tray +cup 2/);
  });
});

describe('what a piece can be told', () => {
  it('a hose: how it runs, and more of it', () => {
    const desk = row(page('hose'), 'Runs').press('go').type('behind the frame tube');
    expect(desk.frame).toContain('How does it run?');
    desk.press('enter');
    expect(last(desk)).toMatchObject({ verb: 'written', value: 'routes', piece: 'hose' });
    expect(textsIn(desk.bench.piece('hose').spec.routes)).toEqual(['behind the frame tube']);
    expect(desk.frame).toContain('> Runs        behind the frame tube');
    expect(desk.rows.at(-1)).toContain('Enter one more');
    desk.press('go').type('over the lead').press('enter');
    expect(textsIn(desk.bench.piece('hose').spec.routes)).toEqual([
      'behind the frame tube',
      'over the lead',
    ]);
  });

  it('that it comes with another, by name; a name that is near is offered, and what was typed stays', () => {
    const desk = row(page('hose'), 'Comes with').press('go').type('alternater').press('enter');
    expect(said(desk)).toContain('No piece alternater in this job. Did you mean Alternator cover?');
    expect(desk.frame).toContain('> alternater');
    desk.press('backspace backspace').type('or').press('enter');
    expect(desk.bench.piece('hose').spec.along).toEqual(['alternator']);
    expect(desk.frame).toContain('> Comes with  Alternator cover');
  });

  it('and from then on it has no step of its own', () => {
    const desk = row(page('hose'), 'Comes with').press('go').type('alt').press('enter escape');
    expect(desk.frame).toContain('Comes with Alternator cover, without a step of its own.');
    expect(desk.rows.at(-1)).toContain('Enter to the job');
    expect(desk.press('go').frame).toMatch(/Hose +comes with Alternator cover/);
    for (const piece of ['gear-lever', 'sprocket-cover', 'alternator']) {
      desk.bench.mark({ do: 'out', piece });
      desk.bench.mark({ do: 'off', piece });
    }
    expect(new Desk(desk.bench).frame).toMatch(/Hose +off with Alternator cover/);
  });

  it('that it bridges two, both in one line', () => {
    const desk = row(page('hose'), 'Bridges').press('go');
    expect(said(desk)).toContain('Gear lever, Sprocket cover and Alternator cover.');
    desk.type('alternator and sprocket').press('enter');
    expect(desk.bench.piece('hose').spec.bridges).toEqual(['alternator', 'sprocket-cover']);
    expect(desk.screen).toBe('known');
    expect(desk.frame).toContain('> Bridges     Alternator cover and Sprocket cover');
  });

  it('what has to come off before it, but no circle and not itself', () => {
    const desk = row(page('hose'), 'Under').press('go').type('hose').press('enter');
    expect(said(desk)).toContain('That is the piece itself.');
    desk.press('ctrl-u').type('gear').press('enter');
    expect(desk.bench.piece('hose').spec.under).toEqual(['gear-lever']);
  });

  it('its torque and the maker’s order, hole by hole; a wrong count stays in the field', () => {
    const desk = row(page('sprocket-cover'), 'Torque').press('go').type('6 N·m, manual 2-12');
    desk.press('enter');
    expect(desk.bench.piece('sprocket-cover').spec.torque?.where).toBe('manual 2-12');
    row(desk, 'Order').press('go').type('3 1').press('enter');
    expect(desk.screen).toBe('field');
    expect(desk.frame).toContain('> 3 1');
    expect(desk.bench.piece('sprocket-cover').spec.sequence).toBeNull();
    desk.type(' 2').press('enter');
    expect(desk.bench.piece('sprocket-cover').spec.sequence).toEqual(['3', '1', '2']);
  });

  it('how long it takes, as a time', () => {
    const desk = row(page('hose'), 'Takes').press('go').type('a while').press('enter');
    expect(desk.frame).toContain('That is no time yet: 20 min, 1 h.');
    desk.press('ctrl-u').type('20 min').press('enter');
    expect(desk.bench.piece('hose').spec.takes?.text).toBe('20 min');
    desk.press('c').type(' or so').press('enter');
    expect(desk.frame).toContain('> Takes       20 min or so. Not 20 min, as printed.');
  });

  it('nothing typed writes nothing', () => {
    const desk = row(page('hose'), 'Runs').press('go enter');
    expect(desk.screen).toBe('known');
    expect(desk.bench.entries).toEqual([]);
  });

  it('and it is taken back with Backspace, on the page or on the piece', () => {
    const desk = row(page('hose'), 'Marks').press('go').type('blue paint').press('enter');
    desk.press('backspace');
    expect(desk.bench.piece('hose').spec.marks).toEqual([]);
    expect(desk.frame).toContain('Taken back');
    expect(desk.frame).toContain('\n> Marks ');
    expect(desk.screen).toBe('known');
    row(desk, 'Marks').press('go').type('red paint').press('enter escape backspace');
    expect(desk.screen).toBe('look');
    expect(desk.bench.piece('hose').spec.marks).toEqual([]);
  });

  it('on the page of another piece too, which says what it was and where', () => {
    const desk = row(page('hose'), 'Marks').press('go').type('blue paint').press('enter');
    desk.open('alternator').press('k backspace');
    expect(desk.bench.piece('hose').spec.marks).toEqual([]);
    expect(desk.frame).toContain('Taken back: Hose: marks written down: blue paint.');
  });

  it('what is half written stands there again', () => {
    const desk = row(page('hose'), 'Runs').press('go').type('over the').press('escape');
    expect(desk.press('go').frame).toContain('> over the');
    desk.type(' tube').press('enter');
    expect(textsIn(desk.bench.piece('hose').spec.routes)).toEqual(['over the tube']);
    expect(desk.press('go').frame).toMatch(/\n>\n/);
  });

  it('with the hose in the other hand, the moment it is off', () => {
    const desk = new Desk(new Bench(LEFT_COVER)).open('hose').press('o');
    expect(desk.frame).toContain('How does it run?');
    desk.type('over the tube; marks: blue paint').press('enter');
    expect(desk.screen).toBe('job');
    const { spec } = desk.bench.piece('hose');
    expect([textsIn(spec.routes), textsIn(spec.marks)]).toEqual([
      ['over the tube'],
      ['blue paint'],
    ]);
    expect(desk.bench.entries.map((e) => e.value)).toEqual(['all', 'routes', 'marks']);
  });

  it('a mark that cannot be saved is said, and what was typed is there still', () => {
    const desk = row(page('hose'), 'Runs').press('go').type('over the tube');
    const unsaved = { code: 'no-space', say: 'There is no room.', fix: 'Make room.' };
    desk.broken = { ok: false, unsaved };
    desk.press('enter');
    expect(desk.screen).toBe('unsaved');
    desk.press('escape');
    expect(desk.frame).toContain('> over the tube');
    desk.broken = null;
    desk.press('enter');
    expect(textsIn(desk.bench.piece('hose').spec.routes)).toEqual(['over the tube']);
  });
});

describe('what is not so here', () => {
  it('is asked with the printed text to change; both stand from then on', () => {
    const desk = row(page('alternator'), 'Torque').press('c');
    expect(desk.frame).toContain('What is true here?');
    expect(desk.frame).toContain('> 10 N·m, manual 2-17');
    desk.press('ctrl-u').type('8 N·m, bulletin 12').press('enter');
    expect(last(desk)).toMatchObject({
      verb: 'corrected',
      value: 'torque',
      piece: 'alternator',
      was: '10 N·m, manual 2-17',
      says: '8 N·m, bulletin 12',
    });
    expect(desk.frame).toContain(
      '> Torque       8 N·m, bulletin 12. Not 10 N·m, manual 2-17, as printed.',
    );
    expect(desk.bench.text).toContain('torque: 10 N·m, manual 2-17');
    desk.press('backspace');
    expect(desk.frame).toContain('> Torque       10 N·m, manual 2-17\n');
  });

  it('can be corrected again: what is printed stays what is printed', () => {
    const desk = row(page('alternator'), 'Torque');
    desk.press('c ctrl-u').type('8 N·m').press('enter');
    desk.press('c ctrl-u').type('9 N·m').press('enter');
    expect(desk.frame).toContain('> Torque       9 N·m. Not 10 N·m, manual 2-17, as printed.');
    desk.press('c ctrl-u').type('10 N·m, manual 2-17').press('enter');
    expect(desk.frame).toContain('> Torque       10 N·m, manual 2-17\n');
  });

  it('one of two of a kind, and no other', () => {
    const desk = row(page('alternator'), 'Loose').press('down c ctrl-u');
    desk.type('thrust washer comes with the cover').press('enter');
    const [dowels, washer] = desk.bench.piece('alternator').spec.loose;
    expect(dowels).toEqual(asPrinted('2 dowels'));
    expect(washer?.text).toBe('thrust washer comes with the cover');
    expect(washer?.printed).toMatch(/washer/);
  });

  it('a hole’s own: note, turns', () => {
    const text = LEFT_COVER.replace('7: {note: oil passage}', '7: {note: oil passage, turns: 15}');
    const desk = row(page('alternator', new Bench(text)), '7: turns').press('go ctrl-u');
    desk.type('lots').press('enter');
    expect(desk.screen).toBe('field');
    expect(desk.frame).toContain('> lots');
    desk.press('ctrl-u').type('12').press('enter');
    expect(desk.bench.piece('alternator').spec.holes.get('7')?.turns).toBe(12);
    expect(desk.frame).toContain('12. Not 15, as printed.');
  });

  it('left as it was, or left empty, it writes nothing', () => {
    const desk = row(page('alternator'), 'Torque').press('c enter');
    expect(desk.screen).toBe('known');
    desk.press('c ctrl-u enter');
    expect(said(desk)).toContain('Something is true here');
    expect(desk.bench.entries).toEqual([]);
  });

  it('half written, it stands there again, and goes once it is kept', () => {
    const desk = row(page('alternator'), 'Torque').press('c ctrl-u').type('8 N').press('escape c');
    expect(desk.frame).toContain('> 8 N\n');
    desk.type('·m').press('enter c');
    expect(desk.frame).toContain('> 8 N·m\n');
  });

  it('of a task: step, limit and the rest from its page', () => {
    const text = LEFT_COVER.replace(
      'diary:',
      'tasks:\n  play: {adjust: Chain slack, limit: 20..30 mm, when: cold}\ndiary:',
    );
    const desk = new Desk(new Bench(text));
    desk.state = { ...desk.state, view: { screen: 'job', here: ':play' } };
    desk.press('go k');
    expect(desk.frame).toMatch(/> Step +Chain slack\n {2}Limit +20\.\.30 mm\n {2}When +cold/);
    row(desk, 'When').press('c ctrl-u').type('warm').press('enter escape');
    expect(desk.screen).toBe('task');
    expect(desk.frame).toContain('When      warm. Not "cold", as printed.');
  });
});

it('days later it still stands beside what is printed', () => {
  const bench = new Bench(LEFT_COVER);
  bench.mark({ do: 'out', piece: 'gear-lever' });
  bench.mark({ do: 'correct', piece: 'gear-lever', what: 'marks', truth: 'no mark at all' });
  const desk = new Desk(bench, { now: LATER });
  expect(desk.screen).toBe('note');
  expect(said(desk)).toContain(
    'True here Gear lever, marks: no mark at all. Not "dot on the shaft in line with the split", as printed.',
  );
});
