import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { LEFT_COVER } from '../covers.ts';
import { Desk } from '../desk.ts';

const row = (text = LEFT_COVER) => new Desk(new Bench(text)).open('alternator').press('r');
const found = (desk: Desk, piece = 'alternator') =>
  desk.bench.piece(piece).holes.map((h) => h.found && [h.found.kind, ...h.found.with].join('+'));

/** Nobody has named its bolts; the job has two kinds. */
const NINE = `putback: 1
job: Weeps
bolts: {S: M6x25, M: M6x35}
pieces:
  engine-cover: {bolts: '? ? ? ? ? ? ? ? ?'}
diary:
`;

describe('off, the whole row typed at once', () => {
  it('shows each word under its hole as it is typed', () => {
    const desk = row().type('s s s m+ s s s+ s ! l s');
    expect(desk.screen).toBe('off-row');
    expect(desk.frame).toContain('1   2   3   4   5   6   7   8   9   10  11');
    expect(desk.frame).toContain('S   S   S   M+  S   S   S+  S   !   L   S');
    expect(desk.frame).toContain('10 of 11 out');
    expect(desk.frame).toContain('STOP before you pry: 9 still in.');
  });

  it('asks what was under each head, with what the file says already written', () => {
    const desk = row().type('s s s m+ s s s+ s s l s').press('enter');
    expect(desk.frame).toContain('What was under the head of 4, M?');
    expect(desk.frame).toContain('> clip');
    desk.press('enter');
    expect(desk.frame).toContain('What was under the head of 7, S?');
    desk.press('ctrl-u').type('copper washer').press('enter');
    expect(desk.screen).toBe('off-count');
    expect(found(desk)[3]).toBe('M+clip');
    expect(found(desk)[6]).toBe('S+copper-washer');
  });

  it('stops before anybody pries where a bolt is still in', () => {
    const desk = row().type('s s s m+clip s s s+copper s ! l s').press('enter');
    expect(desk.screen).toBe('off-count');
    expect(desk.frame).toMatch(/STOP[\s\S]*10 of 11 out\.[\s\S]*9 is still in\./);
    expect(desk.done).toEqual(['ring']);
  });

  it('can be typed without blanks', () => {
    const desk = row().type('sssm+clip ssss!ls').press('enter');
    expect(desk.bench.states('alternator')).toBe('out out out out out out out out home out out');
  });

  it('is not kept while words are missing or too many, and says how many', () => {
    const desk = row().type('s s s').press('enter');
    expect(desk.frame).toContain('3 of 11 typed so far.');
    expect(desk.bench.entries).toHaveLength(0);
    desk.type(' s s s s s s s s s').press('enter');
    expect(desk.frame).toContain('12 words, and the piece has 11 holes.');
  });

  it('says which letters are new in this job', () => {
    expect(row().type('s s x').frame).toContain('X: new in this job.');
  });

  it('says what a word cannot be, and keeps what was typed', () => {
    const desk = row().type('s s s m+clip s s s+copper s s l 55').press('enter');
    expect(desk.screen).toBe('off-row');
    expect(desk.frame).toContain('55 is no word of a row');
    expect(desk.frame).toContain('> s s s m+clip s s s+copper s s l 55');
  });

  it('takes a paste as one step', () => {
    const desk = row()
      .happen({ on: 'paste', text: 's s s m+clip s\ns s+copper s s l s\n' })
      .press('enter');
    expect(desk.screen).toBe('off-count');
    expect(desk.bench.entries).toHaveLength(1);
  });

  it('stands there again when it was left by half, until it is kept', () => {
    const desk = row().type('s s s').press('escape escape');
    expect(desk.screen).toBe('job');
    desk.open('alternator').press('r');
    expect(desk.frame).toContain('> s s s');
    desk.type(' m+clip s s s+copper s s l s').press('enter').press('backspace tab');
    expect(desk.screen).toBe('off-row');
    expect(desk.frame).not.toContain('> s s s');
  });

  it('comes back from the list of keys with everything that was typed', () => {
    const desk = row().type('s s s').press('tab');
    expect(desk.screen).toBe('keys');
    desk.press('escape');
    expect(desk.frame).toContain('> s s s');
  });

  it('never makes a piece smaller: what is not typed is still in', () => {
    const desk = new Desk(new Bench(NINE)).open('engine-cover').press('r').type('s s s s');
    desk.press('enter');
    expect(desk.frame.replace(/\s+/g, ' ')).toContain(
      '4 of 9 typed so far. Enter again: these are out, and 5, 6, 7, 8 and 9 are still in.',
    );
    desk.press('enter');
    const { holes } = desk.bench.piece('engine-cover');
    expect(holes.map((h) => h.state)).toEqual([...Array(4).fill('out'), ...Array(5).fill('home')]);
    expect(desk.frame).toMatch(/STOP[\s\S]*4 of 9 out\./);
    expect(desk.frame).not.toContain('Now it may come off');
  });

  it('asks before one word stands for all holes', () => {
    const desk = new Desk(new Bench(NINE)).open('engine-cover').press('r').type('s');
    desk.press('enter');
    expect(desk.bench.entries).toEqual([]);
    expect(desk.frame).toContain('1 of 9 typed so far. Enter again if all 9 are S, and out.');
    desk.press('enter');
    expect(desk.bench.states('engine-cover')).toBe(Array(9).fill('out').join(' '));
  });

  it('leaves a bolt in that is noted as stuck, whatever stands at its hole, and says so', () => {
    const bench = new Bench(NINE);
    bench.mark({ do: 'state', piece: 'engine-cover', hole: '4', state: 'stuck' });
    const desk = new Desk(bench).open('engine-cover').press('go tab').type('s s s ? s s m s s');
    desk.press('enter');
    expect(bench.piece('engine-cover').holes[3]).toMatchObject({ state: 'home', trouble: 'stuck' });
    expect(desk.frame.replace(/\s+/g, ' ')).toContain('4 stays in: it is noted as stuck.');
    expect(desk.frame).toContain('8 of 9 out');
    expect(desk.frame).not.toContain('Now it may come off');
  });

  it('counts a stuck bolt as in while the row is typed, and what came out before as out', () => {
    const bench = new Bench(NINE);
    const of = { piece: 'engine-cover' };
    bench.mark({ do: 'state', ...of, hole: '7', state: 'stuck' });
    bench.mark({ do: 'out', ...of, holes: ['1', '2', '3', '4', '5', '6', '8', '9'] });
    const desk = new Desk(bench).open('engine-cover').press('r tab');
    expect(desk.step).toBe('off-row');
    desk.type('s s .35 m+clip s s .25 m');
    expect(desk.frame).toContain('8 of 9 out; 7 stuck');
    expect(desk.frame).not.toContain('9 of 9');
    desk.press('enter');
    const said = desk.frame.replace(/\s+/g, ' ');
    expect(said).toContain(
      '8 of 9 typed so far. Enter again: the others are out, and 7 is still in.',
    );
    desk.press('enter');
    expect(desk.frame).not.toContain('another bolt was noted');
    const { holes } = bench.piece('engine-cover');
    expect(holes.map((h) => h.state === 'out')).toEqual([
      ...Array(6).fill(true),
      false,
      true,
      true,
    ]);
    expect(found(desk, 'engine-cover')).toEqual([
      'S',
      'S',
      'M',
      'M+clip',
      'S',
      'S',
      null,
      'M',
      null,
    ]);
  });

  it('a ? takes no name away, and a bolt said to be in again is told as that', () => {
    const bench = new Bench(NINE);
    bench.mark({ do: 'out', piece: 'engine-cover', holes: ['1'], row: 'S' });
    const desk = new Desk(bench).open('engine-cover').press('o tab').type('? s s s s s s s s');
    desk.press('enter');
    expect(found(desk, 'engine-cover')).toEqual(Array(9).fill('S'));
    const again = bench.ask({ do: 'out', piece: 'engine-cover', holes: ['1', '2'], row: '! M' });
    expect(again).toMatchObject({
      refused: {
        code: 'already-out',
        say: '2 came out before, and another bolt was noted. 1 came out before, and the row says still in. Undo that mark first, or say why.',
      },
    });
  });

  it('says which sign means still in, and reads its words', () => {
    const desk = new Desk(new Bench(NINE)).open('engine-cover').press('r');
    expect(desk.frame).toContain('! still in   - found empty   ? out, and nobody knows which');
    desk.type('s s s stuck s s _ s empty');
    expect(desk.frame).toContain('S  S  S  !  S  S  !  S  -');
    expect(desk.frame).toContain('7 of 9 out');
  });

  it('counts what was out before, and names a bolt that came out without a name', () => {
    const desk = new Desk(new Bench(NINE)).open('engine-cover').press('go 2 space tab');
    expect(desk.step).toBe('off-row');
    expect(desk.frame).toContain('1 of 9 out');
    desk.type('s m s s s s s s s').press('enter');
    expect(found(desk, 'engine-cover')).toEqual(['S', 'M', ...Array(7).fill('S')]);
    expect(desk.bench.text).toContain('S M S S S S S S S');
  });

  it('names it on the map too', () => {
    const bench = new Bench(NINE);
    bench.mark({ do: 'out', piece: 'engine-cover', holes: ['9'] });
    const desk = new Desk(bench).open('engine-cover').press('9 s space');
    expect(found(desk, 'engine-cover')[8]).toBe('S');
  });
});
