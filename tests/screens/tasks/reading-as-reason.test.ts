/** Where a reading is refused, the right figure is an answer and no excuse: it is judged, not kept as the reason. */
import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const FLOAT = `putback: 1
job: Idle hunts
machine: Hollin 400 Twin, 41400 km
tasks: {float: {adjust: Float height, limit: 14..15 mm}}
checks: {coil: {check: Coil, limit: 3..5 ohm}}
diary:
`;
const task = (bench: Bench) => bench.entries.at(-1);

/** At the question why, after this was typed as what it was and is. */
function onTask(typed: string): Desk {
  const desk = new Desk(new Bench(FLOAT));
  desk.state = {
    ...desk.state,
    view: { screen: 'task', task: 'float', under: { screen: 'job', here: null } },
  };
  return desk.press('enter').type(typed).press('enter');
}

describe('a figure given where a reason was asked for', () => {
  it('14.5 takes the place of 11, in limits, and is said', () => {
    const desk = onTask('11');
    expect(desk.frame).toContain('Why all the same?');
    expect(desk.frame).toContain('11 mm is out of limit: 14..15 mm.');
    expect(desk.frame).toContain('The right figure, or the reason');
    desk.type('14.5').press('enter');
    expect(task(desk.bench)).toMatchObject({ task: 'float', result: '14.5', judged: 'within' });
    expect(task(desk.bench)).not.toHaveProperty('because');
    expect(desk.frame).toContain('14.5 mm is a reading, and no reason');
  });

  it('a figure that is out of limit as well is refused anew', () => {
    const desk = onTask('11').type('16').press('enter');
    expect(desk.bench.entries).toEqual([]);
    expect(desk.frame).toContain('16 mm is a reading, and no reason.');
    expect(desk.frame).toContain('16 mm is out of limit: 14..15 mm.');
    desk.type('float is bent, new one ordered').press('enter');
    expect(task(desk.bench)).toMatchObject({
      result: '16',
      judged: 'beyond',
      because: 'float is bent, new one ordered',
    });
  });

  it('after what is no figure, and after nothing, 11 is out of limit and no reason', () => {
    for (const typed of ['abc', '']) {
      const desk = onTask(typed);
      expect(desk.frame).toMatch(/Give the figure\.|Give what was measured\./);
      desk.type('11').press('enter');
      expect(desk.bench.entries).toEqual([]);
      expect(desk.frame).toContain('11 mm is out of limit: 14..15 mm.');
      desk.type('was 11, set 14.5').press('enter');
      expect(task(desk.bench)).toMatchObject({ was: '11', set: '14.5', judged: 'within' });
      expect(task(desk.bench)).not.toHaveProperty('because');
    }
  });

  it('what was set is put right, and what it was stays', () => {
    const desk = onTask('was 11, set 16').type('14 1/2 mm').press('enter');
    expect(task(desk.bench)).toMatchObject({ was: '11', set: '14 1/2 mm', judged: 'within' });
  });

  it('a unit that does not turn into the limit is no reason either', () => {
    const desk = onTask('11').type('14.5 bar').press('enter');
    expect(desk.bench.entries).toEqual([]);
    expect(desk.frame).toContain('does not turn into mm');
  });

  it('a bare figure far off is asked for its unit, and with that is judged', () => {
    const desk = onTask('14500');
    expect(desk.bench.entries).toEqual([]);
    expect(desk.frame).toContain('14500 mm would be far off 14..15 mm: write the unit');
    desk.type('14500 µm').press('enter');
    expect(task(desk.bench)).toMatchObject({ result: '14500 µm', judged: 'within' });
  });

  it('words with a figure among them are a reason', () => {
    const desk = onTask('11').type('book says 11 for this one').press('enter');
    expect(task(desk.bench)).toMatchObject({ result: '11', because: 'book says 11 for this one' });
  });
});

describe('by any way the wish comes', () => {
  it('a test that passed with a figure out of limit takes the right one as its word', () => {
    const bench = new Bench(FLOAT.replace('adjust:', 'test:'));
    const entry = bench.mark({
      do: 'done',
      task: 'float',
      result: 'passed',
      says: '11',
      because: '14.5',
    });
    expect(entry).toMatchObject({ says: '14.5', judged: 'within' });
    expect(entry).not.toHaveProperty('because');
  });

  it('a look that was said to be good is judged by the right reading', () => {
    const bench = new Bench(FLOAT);
    const good = { do: 'look', check: 'coil', how: 'good' } as const;
    expect(bench.ask(good).ok).toBe(false);
    const none = bench.ask({ ...good, because: '0.4 ohm' });
    expect(none).toMatchObject({ ok: true, entry: { value: 'bad', result: '0.4 ohm' } });
    const right = bench.ask({ ...good, reading: '0.4', because: '4' });
    expect(right).toMatchObject({ ok: true, entry: { value: 'good', result: '4' } });
  });

  it('a counter that ran back is read again', () => {
    const bench = new Bench(FLOAT);
    const less = { do: 'reading', reading: '4200 km' } as const;
    expect(bench.ask({ ...less, because: '42000 km' })).toMatchObject({
      ok: true,
      entry: { value: '42000 km' },
    });
    expect(bench.ask({ ...less, because: '4300 km' })).toMatchObject({ ok: false });
    expect(bench.ask({ ...less, because: '42000' })).toMatchObject({ ok: false });
    expect(bench.ask({ ...less, because: 'new clocks, 4200 km on them' })).toMatchObject({
      ok: true,
      entry: { value: '4200 km', because: 'new clocks, 4200 km on them' },
    });
  });
});
