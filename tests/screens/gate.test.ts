import { describe, expect, it } from 'vitest';
import { Desk } from './desk.ts';
import { caseOpen, caseShut } from './plan-jobs.ts';
import { ready } from './plan-screens.ts';

const SOON = '2026-04-11T18:30:00+02:00';
const LATE = '2026-04-11T18:50:00+02:00';

const cover = (bench = ready(), look = {}) => new Desk(bench, look).open('case-cover');
const gates = (desk: Desk) =>
  desk.bench.entries
    .filter((e) => ['seen', 'struck', 'added'].includes(e.verb))
    .map((e) => `${e.verb} ${e.value}`);

describe('on with a piece that closes something', () => {
  it('is two glances and two keys: what is inside, then the joint', () => {
    const desk = cover().press('space');
    expect(desk.frame).toContain('before it closes: what went in must come out');
    expect(desk.frame).toContain('Tools, magnets and what blocked something: counted and out.');
    desk.press('space');
    expect(desk.frame).toContain('before the joint is made');
    expect(desk.frame).toContain('Both faces clean and dry');
    expect(desk.frame).toContain('Blind holes blown dry, eyes covered');
    expect(desk.frame).toContain('Counted and in its place: 2 dowels.');
    expect(desk.frame).toContain('Bolts sorted: 3 S, 1 M.');
    expect(desk.frame).toContain('Wrench set for 10 N·m.');
    desk.press('space');
    expect(desk.screen).toBe('on');
    expect(gates(desk)).toEqual(['seen closing all', 'seen sealing all']);
  });

  it('says the open time of the sealant from then on, and that it is over', () => {
    const desk = cover(ready(), { now: SOON }).press('space space space');
    expect(desk.frame).toContain('Now, sealant: closed by 18:35.');
    desk.press('s');
    expect(desk.frame).toContain('sealant: closed by 18:35');
    desk.happen({ on: 'time', now: LATE });
    expect(desk.frame).toContain('sealant: its time was over at 18:35');
  });

  it('is not asked again once it is through, nor for a piece without a joint', () => {
    const desk = cover().press('space space space escape space');
    expect(desk.screen).toBe('on');
    expect(new Desk(ready()).open('lever').press('space').screen).toBe('read');
  });

  it('ticks one by one, strikes, adds, and takes back', () => {
    const desk = cover().press('space space enter');
    expect(gates(desk)).toEqual(['seen closing all', 'seen sealing caution-1']);
    desk.press('escape g');
    const before = desk.frame;
    desk.press('a').type('washer under the clip').press('enter');
    expect(desk.frame).toContain('washer under the clip');
    const struck = /> +(\S[^\n]*)\n/.exec(desk.frame)?.[1] ?? '';
    desk.press('x');
    expect(desk.frame).not.toContain(struck);
    desk.press('backspace');
    expect(desk.frame).toContain(struck);
    expect(before).not.toContain('washer');
  });
});

describe('STOP', () => {
  function rag() {
    const bench = ready();
    bench.mark({ do: 'inside', piece: 'case-cover', what: '2 rags' });
    return bench;
  }

  it('holds the piece while a rag is inside: no key for all passes it', () => {
    const desk = cover(rag()).press('space');
    expect(desk.frame).toMatch(/> STOP 2 rags still inside \(Case cover\)\./);
    desk.press('space space space');
    expect(desk.screen).toBe('gate');
    expect(desk.done).toContain('ring');
    expect(gates(desk)).toEqual(['seen closing all']);
    desk.press('up up up up up up enter');
    expect(desk.bench.job.inside).toEqual([]);
    expect(desk.frame).toContain('seen 2 rags in, and out again (Case cover).');
    desk.press('space');
    expect(desk.frame).toContain('before the joint is made');
  });

  it('can be overruled with a reason, and the bolts are stopped all the same', () => {
    const desk = cover(rag()).press('space w').type('it stays until the pump is in').press('enter');
    expect(desk.bench.entries.at(-1)?.because).toBe('it stays until the pump is in');
    expect(desk.frame).toContain('before the joint is made');
    desk.press('w').type('so').press('enter');
    expect(desk.screen).toBe('on');
    desk.press('s space');
    expect(desk.screen).toBe('stop');
    expect(desk.frame).toContain('STOP');
    expect(desk.frame).toContain('Still inside: 2 rags.');
    expect(desk.done).toContain('ring');
  });

  it('rings for a pulled thread that is not mended', () => {
    const bench = ready();
    bench.mark({ do: 'state', piece: 'case-cover', hole: '2', state: 'pulled' });
    const desk = cover(bench).press('space space');
    expect(desk.frame).toContain('STOP Mend first: 2 pulled.');
    expect(desk.press('space').screen).toBe('gate');
  });
});

describe('what is only let through', () => {
  it('is said: a task not done, a part not here', () => {
    const bench = caseOpen();
    const desk = cover(bench).press('space space');
    expect(desk.frame).toContain('Left as it is: Still to do: Scrape both faces');
    expect(desk.frame).toContain('cover gasket: wanted.');
    desk.press('down enter');
    expect(bench.entries.at(-1)).toMatchObject({ buy: 'gasket', value: 'here' });
  });

  it('on a low screen, all is seen only at the end of the last page', () => {
    const desk = cover(ready(), { columns: 60, rows: 16 }).press('space space');
    expect(desk.frame).toContain('page 1 of 2');
    expect(desk.frame).toContain('Space seen, more below');
    desk.press('space');
    expect(desk.frame).toContain('page 2 of 2');
    expect(gates(desk)).toEqual(['seen closing all']);
    desk.press('space');
    expect(desk.screen).toBe('on');
  });
});

describe('before the first start', () => {
  it('comes by itself when the last piece is tight, and stops for oil that is out', () => {
    const bench = caseOpen();
    for (const buy of ['gasket', 'insert']) bench.mark({ do: 'buy', buy, state: 'here' });
    for (const kind of ['S', 'M']) bench.mark({ do: 'in', piece: 'case-cover', hand: { kind } });
    for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece: 'case-cover', pass });
    bench.mark({ do: 'in', piece: 'lever', hand: { kind: 'S' } });
    const desk = new Desk(bench).open('lever').press('space');
    expect(desk.screen).toBe('look');
    desk.press('space space');
    expect(desk.screen).toBe('gate');
    expect(desk.frame).toContain('before the first start');
    expect(desk.frame).toContain('STOP The oil is out. Fill it in.');
    expect(desk.frame).toContain('seen Nothing is only finger-tight.');
    expect(desk.frame).toContain('Outdoors, or the exhaust led out');
    desk.press('space');
    expect(desk.screen).toBe('gate');
    expect(desk.done).toContain('ring');
  });

  it('is a key on the job, and is through with one when nothing stops', () => {
    const bench = caseShut();
    bench.mark({ do: 'done', task: 'fill' });
    const desk = new Desk(bench);
    expect(desk.frame).toContain('s before the first start');
    desk.press('s');
    expect(desk.frame).toContain('seen In again: the oil.');
    desk.press('space');
    expect(desk.screen).toBe('job');
    expect(gates(desk)).toEqual(['seen start all']);
  });
});

describe('before prying', () => {
  it('the count can be gone through one by one', () => {
    const bench = caseOpen();
    bench.mark({ do: 'undo', id: bench.entries.at(-1)?.id ?? '' });
    const desk = new Desk(bench).open('case-cover');
    expect(desk.screen).toBe('off-count');
    desk.press('g');
    expect(desk.frame).toContain('before you pry');
    expect(desk.frame).toContain('seen 4 of 4 out.');
    expect(desk.frame).toContain('Falls out or stays in: 2 dowels.');
    desk.press('space');
    expect(desk.screen).toBe('off-count');
  });
});
