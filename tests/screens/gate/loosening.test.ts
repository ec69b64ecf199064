/** The gate before the first bolt: one glance and one key, and in nobody's way who types the row afterwards. */
import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const JOB = `putback: 1
job: Starter slips
bolts: {S: M6x25}
pieces:
  drum: {bolts: S S, loose: [spiral spring], marks: dot at 6}
  lid: {bolts: S S}
diary:
`;
const open = (piece: string, bench = new Bench(JOB)) => new Desk(bench).open(piece).press('go');

describe('before the first bolt', () => {
  it('stands what is to be made safe, with what is to be read; one key goes on', () => {
    const desk = open('drum');
    expect(desk.screen).toBe('gate');
    expect(desk.frame).toContain('before the first bolt');
    expect(desk.frame).toContain('A spring is behind it');
    expect(desk.frame).toContain('Marked: dot at 6.');
    desk.press('a');
    expect(desk.step).toBe('off');
    expect(desk.bench.entries.at(-1)).toMatchObject({ piece: 'drum', value: 'loosening all' });
    // What is said on coming to a step is said behind the gate as well.
    expect(desk.frame).toContain('Photograph what lies behind it');
  });

  it('taken back on coming off it is asked again before the first bolt', () => {
    const desk = open('drum').press('a');
    expect(desk.step).toBe('off');
    desk.press('backspace');
    expect(desk.frame).toContain('Taken back: ');
    expect(desk.step).toBe('look');
    desk.press('space');
    expect(desk.bench.states('drum')).toBe('home home');
    expect(desk.press('enter').screen).toBe('gate');
    desk.press('a space');
    expect(desk.bench.states('drum')).toContain('out');
  });

  it('taken back where a piece without bolts comes off it is asked again as well', () => {
    const wheel = 'putback: 1\njob: Brakes\npieces: {front-wheel: }\ndiary:\n';
    const desk = new Desk(new Bench(wheel)).open('front-wheel').press('o');
    expect(desk.screen).toBe('gate');
    desk.press('a');
    expect(desk.step).toBe('off-count');
    expect(desk.press('backspace').step).toBe('look');
    expect(desk.press('o').screen).toBe('gate');
  });

  it('is not passed by Space, and Esc leads back', () => {
    const desk = open('drum').press('space space');
    expect(desk.screen).toBe('gate');
    expect(desk.press('escape').screen).toBe('look');
  });

  it('is not asked where nothing applies, nor once it was seen, nor when a bolt is out', () => {
    expect(open('lid').step).toBe('off');
    const seen = new Bench(JOB);
    seen.mark({ do: 'gate', moment: 'loosening', piece: 'drum', how: 'seen', item: 'all' });
    expect(open('drum', seen).screen).not.toBe('gate');
    const begun = new Bench(JOB);
    begun.mark({ do: 'out', piece: 'drum', holes: ['1'] });
    expect(new Desk(begun).open('drum').step).toBe('off');
  });

  it('stops no row that is typed afterwards, and says what was to be seen to', () => {
    const desk = new Desk(new Bench(JOB)).open('drum').press('r');
    expect(desk.step).toBe('off-row');
    expect(desk.frame.replaceAll(/\s+/g, ' ')).toContain(
      'Before the first bolt: A spring is behind it',
    );
    desk.type('S S').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({ piece: 'drum', verb: 'out' });
  });

  it('comes first where a piece is named with its number of bolts, or its row is typed', () => {
    const empty = 'putback: 1\njob: Brakes\npieces:\ndiary:\n';
    for (const [name, said] of [
      ['brake caliper 2', 'it cannot roll or fall without this brake'],
      ['front axle 1', 'On stands, rocked by hand'],
    ] as const) {
      const desk = new Desk(new Bench(empty)).press('o').type(name).press('enter');
      expect(desk.screen).toBe('gate');
      expect(desk.frame).toContain(said);
      desk.press('a');
      expect(desk.step).toBe('off');
    }
    const typed = new Desk(new Bench(empty)).press('o').type('brake caliper').press('enter enter');
    expect(typed.step).toBe('read');
    expect(typed.frame).toContain('A caliper hangs by a wire');
    const row = new Desk(
      new Bench(empty.replace('pieces:', 'pieces: {brake-caliper: {bolts: S S}}')),
    );
    expect(row.open('brake-caliper').press('r').screen).toBe('gate');
  });

  it('seen one by one, Enter goes on, as on a page that only tells', () => {
    const desk = open('drum');
    for (let i = 0; i < 9 && !/Enter go on/.test(desk.frame); i += 1) desk.press('enter');
    expect(desk.screen).toBe('gate');
    expect(desk.press('enter').step).toBe('off');
  });
});
