import { describe, expect, it } from 'vitest';
import { wrongPresses } from '../../src/screens/base/own-presses.ts';
import { atItsPlace } from '../../src/screens/kit/alphabets.ts';
import { pressNamed } from '../../src/screens/kit/press.ts';
import { KEYS, KEYS_BY_SCREEN } from '../../src/screens/show/screens.ts';
import { Bench } from '../job/bench.ts';
import { Desk } from './desk.ts';

describe('presses that a user gives to keys', () => {
  it('do what the key does; its old press does nothing, and the foot says so', () => {
    const desk = new Desk(new Bench(), {
      presses: { quit: ['j'], keys: ['tab', '?'] },
      columns: 100,
    });
    expect(desk.frame).toContain('j leave');
    expect(desk.press('q').done).toEqual([]);
    expect(desk.press('tab').screen).toBe('keys');
    expect(desk.frame).toMatch(/^j +leave/m);
    desk.press('escape j');
    expect(desk.done).toEqual(['quit']);
  });

  it('go before what another key of the screen had there, and leave texts alone', () => {
    const desk = new Desk(new Bench(), { presses: { note: ['b'] } }).open('cover');
    expect(desk.press('b').screen).toBe('field');
    desk.type('bnx');
    expect(desk.frame).toContain('> bnx');
  });

  it('that two keys of one screen would need, or that leave a key none, are told', () => {
    expect(wrongPresses(KEYS_BY_SCREEN, { quit: ['ctrl-n'], keys: ['ctrl-n'] })).toEqual([
      { id: 'quit', press: 'ctrl-n', clash: 'keys' },
      { id: 'keys', press: 'ctrl-n', clash: 'quit' },
    ]);
    expect(wrongPresses(KEYS_BY_SCREEN, { keys: ['q'] })[0]).toMatchObject({ clash: 'quit' });
    expect(wrongPresses(KEYS_BY_SCREEN, { keys: ['ctrl-n'], quit: ['ctrl-o'] })).toEqual([]);
  });

  it('of two steps of a piece never meet: what one of them has is free on the other', () => {
    // z draws the holes at the piece, n notes what is left over in an answer.
    expect(wrongPresses(KEYS_BY_SCREEN, { out: ['z', 'space'], note: ['n', 'ctrl-n'] })).toEqual(
      [],
    );
    const own = { presses: { out: ['z', 'space'] } };
    const desk = new Desk(new Bench(), own).open('cover').press('go go');
    const before = desk.bench.entries.length;
    expect(desk.press('z').bench.entries).toHaveLength(before + 1);
  });

  it('that something else takes first are told: a digit is a hole, a sign is itself in a text', () => {
    expect(wrongPresses(KEYS_BY_SCREEN, { out: ['5', 'space'] })).toEqual([
      { id: 'out', press: '5', clash: 'point' },
    ]);
    expect(wrongPresses(KEYS_BY_SCREEN, { back: ['z'] })).toContainEqual({
      id: 'back',
      press: 'z',
      clash: 'type',
    });
    expect(wrongPresses(KEYS_BY_SCREEN, { back: ['escape', 'z'] })).not.toContainEqual(
      expect.objectContaining({ clash: 'type' }),
    );
  });

  it('a letter that is a kind of this job leaves its key the presses of the table', () => {
    const own = { presses: { out: ['s'] } };
    const desk = new Desk(new Bench(), own).open('cover').press('go go');
    expect(desk.frame).toContain('Space this one is out');
    const before = desk.bench.entries.length;
    expect(desk.press('space').bench.entries.length).toBe(before + 1);
    const other = new Desk(new Bench(), { presses: { out: ['f13'] } }).open('cover');
    expect(other.press('go go').frame).toContain('F13 this one is out');
    expect(other.press('f13').bench.entries.length).toBe(1);
  });

  it('are written as they stand on a keyboard', () => {
    const read = ['Space', 'pagedown', 'PageDown', 'ctrl-n', 'x', 'ß', '.', 'Esc', 'escape'];
    expect(read.map(pressNamed)).toEqual([
      'space',
      'pagedown',
      'pagedown',
      'ctrl-n',
      'x',
      'ß',
      '.',
      'escape',
      'escape',
    ]);
    expect(['F13', 'f24', 'PgDn', 'Return', 'Ins', 'ctrl-m', 'Ctrl-I'].map(pressNamed)).toEqual([
      'f13',
      'f24',
      'pagedown',
      'enter',
      'insert',
      // What a terminal sends for these is that key.
      'enter',
      'tab',
    ]);
    for (const no of ['', 'xy', 'ctrl-alt-x', 'f99', 'f0', 'ctrl-z', '\x1b', '\n'])
      expect(pressNamed(no)).toBe(null);
  });

  it('each press of the table can be written', () => {
    for (const press of KEYS.flatMap((key) => key.presses)) {
      // Those of a shell, for correcting a text.
      if (/^alt-|^ctrl-(.{2,}|[^a-y])/.test(press)) continue;
      expect(pressNamed(press), press).toBe(press);
    }
  });
});

describe('a keyboard of another alphabet', () => {
  it.each([
    ['й', 'q'],
    ['ф', 'a'],
    ['т', 'n'],
    ['ь', 'm'],
    ['л', 'k'],
    ['і', 's'],
    ['ў', 'o'],
    ['α', 'a'],
    ['κ', 'k'],
    ['ν', 'n'],
    ['ς', 'w'],
  ])('%s is %s by its place (the layouts as sold; common practice, no source)', (letter, latin) => {
    expect(atItsPlace(letter)).toBe(latin);
    expect(atItsPlace(letter.toUpperCase())).toBe(latin === 'w' ? 's' : latin);
  });

  it('what is on a Latin keyboard is nothing else', () => {
    for (const press of 'abcxyz[];,./?!0189') expect(atItsPlace(press)).toBe(null);
    for (const press of ['space', 'enter', 'ctrl-c', 'é', 'ß', '東'])
      expect(atItsPlace(press)).toBe(null);
  });

  it('works the screens, and types itself where a text is typed', () => {
    const desk = new Desk(new Bench()).open('cover').press('т');
    expect(desk.screen).toBe('field');
    desk.type('сальник');
    expect(desk.frame).toContain('> сальник');
    desk.press('enter');
    expect(desk.bench.entries.at(-1)?.value).toBe('сальник');
    const other = new Desk(new Bench()).press('й');
    expect(other.done).toEqual(['quit']);
  });

  it('names a kind by the letter at its place', () => {
    // M stands where ь is.
    const desk = new Desk(new Bench()).open('cover').press('go go');
    const latin = new Desk(new Bench()).open('cover').press('go go');
    expect(desk.press('ь').frame).toBe(latin.press('m').frame);
  });
});
