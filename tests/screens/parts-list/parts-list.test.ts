import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { GRINDER } from '../covers.ts';
import { Desk } from '../desk.ts';
import { caseOpen } from '../plan-jobs.ts';

const marks = (desk: Desk) =>
  desk.bench.entries.filter((e) => e.buy).map((e) => [e.buy, e.value, e.promised].join(' ').trim());

describe('what must be had', () => {
  it('stands in one place, what is missing marked first, with what it holds up', () => {
    const desk = new Desk(caseOpen());
    expect(desk.frame).toContain('b 2 parts missing');
    desk.press('b');
    expect(desk.frame).toMatch(/^What must be had {2,}3 of 3 not here/);
    expect(desk.frame).toContain('> cover gasket');
    expect(desk.frame).toContain('Holds up: Case cover on.');
    desk.press('escape');
    expect(desk.screen).toBe('job');
  });

  it('goes on by one key each: ordered with its promise, here, compared, fitted', () => {
    const desk = new Desk(caseOpen()).press('b go').type('25 april').press('enter');
    expect(desk.frame).toContain('> cover gasket         promised 25 April');
    expect(desk.frame).toContain('- cover gasket: promised 25 April.');
    desk.press('go');
    expect(desk.frame).toContain('> cover gasket         here');
    expect(desk.frame).toContain('2 of 3 not here');
    desk.press('go');
    expect(desk.frame).toContain('here, the same as the old one');
    desk.press('go');
    expect(desk.frame).toContain('fitted');
    expect(marks(desk)).toEqual([
      'gasket ordered 2026-04-25',
      'gasket here',
      'gasket compared',
      'gasket fitted',
    ]);
  });

  it('asks for the day again when it is none, and takes none at all', () => {
    const desk = new Desk(caseOpen()).press('b go').type('soon').press('enter');
    expect(desk.frame).toContain('That is no day yet: 25 April');
    desk.press('ctrl-u enter');
    expect(marks(desk)).toEqual(['gasket ordered']);
  });

  it('can be wrong, short, or sold under another number; and taken back', () => {
    const desk = new Desk(caseOpen()).press('b w');
    expect(desk.frame).toContain('came, and does not fit');
    desk.press('s');
    expect(desk.frame).toContain('came short');
    desk.press('n').type('HL-9').press('enter');
    expect(desk.frame).toContain('has another number now');
    expect(desk.frame).toContain('now HL-9.');
    desk.press('backspace');
    expect(desk.frame).toContain('> cover gasket         came short');
  });

  it('a day that nobody is likely to have meant is read back before it counts', () => {
    const bench = caseOpen();
    const desk = new Desk(bench).press('b go').type('2062-05-03').press('enter');
    expect(desk.screen).toBe('field');
    expect(desk.frame).toContain('3 May 2062 is in ');
    expect(marks(desk)).toEqual([]);
    desk.press('enter');
    expect(marks(desk)).toEqual(['gasket ordered 2062-05-03']);
    const other = new Desk(caseOpen()).press('b go').type('2026-01-03').press('enter');
    expect(other.frame).toContain('3 January is over.');
    other.press('ctrl-u').type('5 days').press('enter');
    expect(marks(other)).toEqual(['gasket ordered 2026-04-16']);
  });

  it('a piece says which part it cannot go on without', () => {
    const desk = new Desk(caseOpen()).open('case-cover');
    expect(desk.frame).toContain('Not here yet: cover gasket (not ordered yet)');
    desk.press('b go enter go down go enter go escape');
    expect(desk.screen).toBe('look');
    expect(desk.frame).not.toContain('Not here yet: cover gasket');
  });

  it('what came on the list by itself is written into the file with its first mark', () => {
    const bench = new Bench(GRINDER);
    bench.mark({ do: 'out', piece: 'yoke' });
    bench.mark({ do: 'off', piece: 'yoke' });
    const desk = new Desk(bench).press('b');
    for (let i = 0; i < 12 && !/^> M8x30/m.test(desk.frame); i += 1) desk.press('down');
    expect(desk.frame).toContain('On the list by itself: used once, comes off with Steering yoke');
    desk.press('go').type('5 days').press('enter');
    expect(bench.text).toMatch(/yoke-t: \{what: "?M8x30 10.9 once.*for: yoke on\}/);
    expect(marks(desk)).toEqual(['yoke-t ordered 2026-04-16']);
  });
});
