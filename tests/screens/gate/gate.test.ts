import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';
import { WRENCHES } from '../more-screens.ts';
import { CASE, caseOpen, caseShut } from '../plan-jobs.ts';
import { ready } from '../plan-screens.ts';

const SOON = '2026-04-11T18:30:00+02:00';
const LATE = '2026-04-11T18:50:00+02:00';

const cover = (bench = ready(), look = {}) => new Desk(bench, look).open('case-cover');
/** The frame as it reads: without its edges and line ends. */
const words = (desk: Desk) => desk.frame.replace(/[\s|]+/g, ' ');
const rings = (desk: Desk) => desk.done.filter((d) => d === 'ring').length;
const gates = (desk: Desk) =>
  desk.bench.entries
    .filter((e) => ['seen', 'struck', 'added'].includes(e.verb))
    .map((e) => `${e.verb} ${e.value}`);

describe('on with a piece that closes something', () => {
  it('is two glances and two keys: what is inside, then the joint', () => {
    const desk = cover().press('go');
    expect(desk.frame).toContain('before it closes: what went in must come out');
    expect(desk.frame).toContain('Tools, magnets and what blocked something: counted and out.');
    desk.press('go');
    expect(desk.frame).toContain('before the joint is made');
    expect(desk.frame).toContain('Both faces clean and dry');
    expect(desk.frame).toContain('Blind holes blown dry, eyes covered');
    expect(desk.frame).toContain('Counted and in its place: 2 dowels.');
    expect(desk.frame).toContain('Bolts sorted: 3 S, 1 M.');
    expect(desk.frame).toContain('Wrench set for 10 N·m.');
    desk.press('go');
    expect(desk.screen).toBe('on');
    expect(gates(desk)).toEqual(['seen closing all', 'seen sealing all']);
  });

  it('is asked again when what was seen is taken back', () => {
    const desk = cover().press('go go go');
    expect(desk.screen).toBe('on');
    desk.press('backspace');
    expect(desk.screen).toBe('look');
    desk.press('go');
    expect(desk.frame).toContain('before the joint is made');
    // Nothing of it counts as ticked: the next key notes it again.
    desk.press('backspace go');
    expect(desk.frame).not.toContain('Left as it is');
    expect(desk.bench.job.entries.at(-1)?.verb).toBe('seen');
  });

  it('says what to set on the wrench of this bench', () => {
    const inches = ready(CASE.replace('10 N·m, manual 3-4', '95 lbf·in'));
    const desk = new Desk(inches, {}, WRENCHES).open('case-cover').press('go go');
    expect(words(desk)).toContain('Wrench set for 95 lbf·in. 95 lbf·in as printed → set 10.7 N·m.');
    expect(words(desk)).toContain('Set 10.5 N·m on the small wrench, in its steps of 0.5.');
  });

  it('says the open time of the sealant from then on, and that it is over', () => {
    const desk = cover(ready(), { now: SOON }).press('go go go');
    expect(desk.frame).toContain('Now, sealant: closed by 18:35.');
    desk.press('s');
    expect(desk.frame).toContain('sealant: closed by 18:35');
    desk.happen({ on: 'time', now: LATE });
    expect(desk.frame).toContain('sealant: its time was over at 18:35');
  });

  it('says it until the last bolt is tight', () => {
    const desk = cover(ready(), { now: SOON }).press('go go go s a m a');
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain('Sealant: closed by 18:35.');
    desk.press('go go go go go go go');
    expect(desk.screen).toBe('tight');
    expect(desk.frame).toContain('Sealant: closed by 18:35.');
    desk.press('go go go go');
    expect(desk.frame).not.toContain('Sealant: closed');
  });

  it('counts it from going on, not from what was ticked while something stopped', () => {
    const bench = ready();
    bench.mark({ do: 'state', piece: 'case-cover', hole: '2', state: 'pulled' });
    const desk = cover(bench, { now: SOON }).press('go go go');
    expect(gates(desk)).toEqual(['seen closing all', 'seen sealing all']);
    bench.mark({ do: 'state', piece: 'case-cover', hole: '2', state: 'mended' });
    desk.happen({
      on: 'file',
      file: 'cover.yaml',
      read: { ok: true, job: bench.job, faults: [] },
    });
    desk.press('go');
    expect(desk.screen).toBe('on');
    expect(gates(desk).filter((g) => g === 'seen sealing all')).toHaveLength(2);
  });

  it('is not asked again once it is through, nor for a piece without a joint', () => {
    const desk = cover().press('go go go escape go');
    expect(desk.screen).toBe('on');
    expect(new Desk(ready()).open('lever').press('go').screen).toBe('read');
  });

  it('ticks one by one, strikes, adds, and takes back', () => {
    const desk = cover().press('go go enter');
    expect(gates(desk)).toEqual(['seen closing all', 'seen sealing caution-1']);
    desk.press('escape g');
    const before = desk.frame;
    desk.press('+').type('washer under the clip').press('enter enter');
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
    const desk = cover(rag()).press('go');
    expect(desk.frame).toContain('+- STOP -');
    expect(words(desk)).toContain(
      '2 rags went in through the opening under Case cover at 18:25: take them out.',
    );
    expect(desk.frame).toContain('Enter they are out   w all the same, and why');
    desk.press('go go go');
    expect(desk.screen).toBe('gate');
    expect(gates(desk)).toEqual(['seen closing all']);
    desk.press('enter');
    expect(desk.bench.job.inside).toEqual([]);
    expect(desk.frame).not.toContain('STOP');
    expect(desk.frame).toContain('seen 2 rags in, and out again (Case cover).');
    desk.press('go');
    expect(desk.frame).toContain('before the joint is made');
  });

  it('rings once on arriving, and not again for every key', () => {
    const desk = cover(rag());
    expect(rings(desk)).toBe(0);
    desk.press('go');
    expect(rings(desk)).toBe(1);
    desk.press('go go down down up up go ? escape');
    expect(desk.screen).toBe('gate');
    expect(rings(desk)).toBe(1);
  });

  it('rings again when one comes there anew', () => {
    const desk = cover(rag()).press('go escape go');
    expect(desk.screen).toBe('gate');
    expect(rings(desk)).toBe(2);
  });

  it('does not ring where nothing stops', () => {
    expect(rings(cover().press('go go go'))).toBe(0);
  });

  it('says how many of them are still inside', () => {
    const bench = rag();
    bench.mark({ do: 'cleared', piece: 'case-cover', what: '1 rag' });
    const desk = cover(bench, { now: '2026-05-02T10:00:00+02:00' }).press('go');
    expect(words(desk)).toContain(
      '1 of the 2 rags that went in through the opening under Case cover on 11 April is still inside: take it out.',
    );
    expect(desk.frame).toContain('Enter it is out');
  });

  it('holds all that stops in the one frame, the marked one with its way out', () => {
    const bench = rag();
    bench.mark({ do: 'inside', piece: 'case-cover', what: '1 magnet' });
    const desk = cover(bench).press('go');
    expect(desk.frame.match(/STOP/g)).toHaveLength(1);
    expect(words(desk)).toMatch(/> 2 rags went in .* 1 magnet went in/);
    desk.press('down enter');
    expect(desk.bench.job.inside.map((i) => i.what)).toEqual(['rag']);
    expect(words(desk)).not.toContain('magnet went in');
    desk.press('enter');
    expect(desk.frame).not.toContain('STOP');
    expect(desk.frame).toContain('Looked in with a lamp');
  });

  it('on a low screen counts what has no room, and keeps the marked one in sight', () => {
    const bench = rag();
    for (const what of ['1 plug', '1 magnet', '1 blocking tool'])
      bench.mark({ do: 'inside', piece: 'case-cover', what });
    const desk = cover(bench, { columns: 60, rows: 16 }).press('go');
    expect(desk.frame).toMatch(/And \d more\./);
    desk.press('down down down');
    expect(words(desk)).toContain('> 1 blocking tool went in');
  });

  it('stands above every page of the list', () => {
    const desk = new Desk(caseShut(), { columns: 60, rows: 16 }).press('s');
    for (const page of [1, 2]) {
      expect(desk.frame).toContain(`page ${page} of `);
      expect(desk.frame).toContain('+- STOP -');
      desk.press('go');
    }
  });

  it('what stops cannot be struck', () => {
    const desk = cover(rag()).press('go x');
    expect(desk.frame).toContain('That one stops: it cannot be struck.');
    expect(gates(desk)).toEqual([]);
  });

  it('can be overruled with a reason, and the bolts are stopped all the same', () => {
    const desk = cover(rag()).press('go w').type('it stays until the pump is in').press('enter');
    expect(desk.bench.entries.at(-1)?.because).toBe('it stays until the pump is in');
    expect(desk.frame).toContain('before the joint is made');
    desk.press('w').type('so').press('enter');
    expect(desk.screen).toBe('on');
    desk.press('s go');
    expect(desk.screen).toBe('stop');
    expect(desk.frame).toContain('STOP');
    expect(desk.frame).toContain('Still inside: 2 rags.');
    expect(desk.done).toContain('ring');
  });

  it('rings for a pulled thread that is not mended', () => {
    const bench = ready();
    bench.mark({ do: 'state', piece: 'case-cover', hole: '2', state: 'pulled' });
    const desk = cover(bench).press('go');
    expect(rings(desk)).toBe(0);
    desk.press('go');
    expect(rings(desk)).toBe(1);
    expect(words(desk)).toContain('2 pulled since 18:25. Mend it before the joint is made.');
    expect(desk.press('go').screen).toBe('gate');
    expect(desk.frame).toContain('Enter to that hole');
    desk.press('enter');
    expect(desk.screen).toBe('look');
    desk.press('m').type('wire insert M6 x 9').press('enter');
    expect(desk.bench.piece('case-cover').holes[1]?.trouble).toBeNull();
    expect(desk.bench.entries.at(-1)).toMatchObject({ says: 'wire insert M6 x 9' });
  });
});

describe('what is only let through', () => {
  it('is said: a task not done, a part not here', () => {
    const bench = caseOpen();
    const desk = cover(bench).press('go go');
    // What is used once and not here stops: a new one, or a reason.
    expect(desk.frame).toContain('cover gasket is never used twice');
    expect(desk.frame).toContain('t new ones are here');
    desk.press('t');
    expect(bench.entries.at(-1)).toMatchObject({ buy: 'gasket', value: 'here' });
    desk.press('go');
    expect(desk.frame).toContain('Left as it is: Still to do: Scrape both faces');
  });

  it('no repeated Enter says that a part on order is here, nor notes what the job knows not to be so', () => {
    const bench = caseOpen();
    bench.mark({ do: 'buy', buy: 'gasket', state: 'ordered' });
    const desk = cover(bench).press('go go');
    const before = bench.entries.length;
    for (let i = 0; i < 40; i += 1) desk.press('enter');
    const noted = bench.entries.slice(before);
    expect(noted.filter((e) => e.buy === 'gasket')).toEqual([]);
    const open = desk.frame;
    for (const { value } of noted) expect(value).toMatch(/^(?:seen|sealing|closing) /);
    expect(noted.map((e) => e.value)).toEqual([...new Set(noted.map((e) => e.value))]);
    expect(open.replace(/[\s|]+/g, ' ')).toContain('no new one is noted as here (ordered)');
  });

  it('on a low screen, all is seen only at the end of the last page', () => {
    const desk = cover(ready(), { columns: 60, rows: 16 }).press('go go');
    expect(desk.frame).toContain('page 1 of 2');
    expect(desk.frame).toContain('a seen, more below');
    desk.press('go');
    expect(desk.frame).toContain('page 2 of 2');
    expect(gates(desk)).toEqual(['seen closing all']);
    desk.press('go');
    expect(desk.screen).toBe('on');
  });
});

describe('before the first start', () => {
  it('comes by itself when the last piece is tight, and stops for oil that is out', () => {
    const bench = caseOpen();
    bench.mark({ do: 'done', task: 'scrape' });
    for (const buy of ['gasket', 'insert']) bench.mark({ do: 'buy', buy, state: 'here' });
    for (const kind of ['S', 'M']) bench.mark({ do: 'in', piece: 'case-cover', hand: { kind } });
    for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece: 'case-cover', pass });
    bench.mark({ do: 'in', piece: 'lever', hand: { kind: 'S' } });
    const desk = new Desk(bench).open('lever').press('go');
    expect(desk.screen).toBe('look');
    desk.press('go go');
    expect(desk.screen).toBe('gate');
    expect(desk.frame).toContain('before the first start');
    expect(rings(desk)).toBe(1);
    expect(words(desk)).toContain('> The oil has been out since 18:25. Fill it in.');
    expect(desk.frame).toContain('seen Nothing is only finger-tight.');
    expect(desk.frame).toContain('An engine outdoors, or its exhaust led out');
    desk.press('go');
    expect(desk.screen).toBe('gate');
    expect(rings(desk)).toBe(1);
    // The way out leads there and back.
    desk.press('enter');
    expect(desk.screen).toBe('task');
    desk.press('go');
    expect(desk.bench.job.tasks.get('fill')?.done).toBe('done');
    expect(desk.screen).toBe('gate');
    expect(desk.frame).not.toContain('STOP');
    expect(desk.frame).toContain('seen In again: the oil.');
  });

  it('stops for finger-tight bolts, and leads to their tightening', () => {
    const bench = caseOpen();
    for (const buy of ['gasket', 'insert']) bench.mark({ do: 'buy', buy, state: 'here' });
    for (const kind of ['S', 'M']) bench.mark({ do: 'in', piece: 'case-cover', hand: { kind } });
    bench.mark({ do: 'in', piece: 'lever', hand: { kind: 'S' }, because: 'to hold it' });
    bench.mark({ do: 'done', task: 'fill' });
    const desk = new Desk(bench).press('s');
    expect(rings(desk)).toBe(1);
    expect(words(desk)).toContain('Lever: 1 has been only finger-tight since 18:25. Tighten it.');
    expect(words(desk)).toContain(
      'Case cover: 1, 2, 3 and 4 have been only finger-tight since 18:25. Tighten them.',
    );
    desk.press('down');
    expect(desk.frame).toContain('Enter tighten them');
    desk.press('enter');
    expect(desk.screen).toBe('tight');
    expect(desk.frame).toContain('Case cover');
    for (const piece of ['case-cover', 'lever'])
      for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece, pass });
    desk.happen({
      on: 'file',
      file: 'cover.yaml',
      read: { ok: true, job: bench.job, faults: [] },
    });
    expect(desk.press('escape escape s').frame).not.toContain('STOP');
  });

  it('a brake is ticked by itself, with the key that says so', () => {
    const bench = new Bench('putback: 1\njob: Brake\npieces: {caliper: {care: brake}}\ndiary:\n');
    bench.mark({ do: 'off', piece: 'caliper' });
    bench.mark({ do: 'on', piece: 'caliper' });
    const desk = new Desk(bench).press('s');
    expect(words(desk)).toContain('> Caliper: lever pumped until it is firm.');
    desk.press('go');
    expect(desk.frame).toContain('STOP');
    expect(desk.frame).toContain('Enter it is done');
    desk.press('enter');
    expect(desk.frame).not.toContain('STOP');
  });

  it('is loud about a joint that cures, and lets through', () => {
    const bench = caseShut(CASE.replace('open 10 min;', 'open 10 min, cures 12 h;'));
    bench.mark({ do: 'done', task: 'fill' });
    const desk = new Desk(bench).press('s');
    expect(words(desk)).toContain('Case cover: sealant cures 12 h, until 06:25 tomorrow.');
    expect(rings(desk)).toBe(0);
    desk.press('go');
    expect(desk.screen).toBe('job');
    expect(words(desk)).toContain('Left as it is: Case cover: sealant cures 12 h');
  });

  it('is a key on the job, and is through with one when nothing stops', () => {
    const bench = caseShut();
    bench.mark({ do: 'done', task: 'fill' });
    const desk = new Desk(bench);
    expect(desk.frame).toContain('s before the first start');
    desk.press('s');
    expect(desk.frame).toContain('seen In again: the oil.');
    desk.press('go');
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
    expect(desk.frame).toContain('Falls out or stays in: 2 dowels.');
    desk.press('g');
    expect(desk.frame).toContain('before you pry');
    expect(desk.frame).toContain('seen 4 of 4 out.');
    expect(desk.frame).toContain('Falls out or stays in: 2 dowels.');
    desk.press('go');
    expect(desk.screen).toBe('off-count');
  });
});
