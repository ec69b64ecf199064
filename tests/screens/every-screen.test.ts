/** What holds on every screen: a way back, out, the list of keys, a foot, and no text that is cut. */
import { describe, expect, it } from 'vitest';
import { withoutDigits } from '../../src/screens/base/digits.ts';
import { width } from '../../src/screens/kit/text.ts';
import { readOut } from '../../src/screens/show/read-out.ts';
import type { Desk } from './desk.ts';
import type { Place } from './every-screen.ts';
import { LONG, long, longScreen, SIZES } from './long-screens.ts';

const PLACES = SIZES.flatMap((size) =>
  (Object.keys(LONG) as Place[]).map((place) => ({ place, size, ...size })),
);

/** Where Down marks the next row. */
const LISTS: readonly Place[] = [
  'bench',
  'find',
  'due',
  'last',
  'job',
  'gate',
  'parts',
  'tests',
  'known',
  'trouble',
  'trace',
  'starts',
  'within-reach',
];

/** Where a row that is longer than the screen goes on once it is opened. */
const OPENED: readonly Place[] = ['job', 'tests', 'within-reach'];

/**
 * All that can be read here: moved down to the end, and each row of a list marked. `begun`: names of the texts that
 * are begun on the way, on the rows or read out, where nothing has to fit.
 */
function readAll(desk: Desk): { read: string; begun: Set<string> } {
  const place = desk.screen as Place;
  const seen: string[] = [];
  const begun = new Set<string>();
  /** Presses as long as that changes something. */
  const press = (key: string, each: () => void) => {
    for (let before = ''; desk.frame !== before; ) {
      each();
      before = desk.frame;
      desk.press(key);
    }
  };
  // A row of a list says by two dots that it goes on: it does where it is marked, or opened.
  const look = () => seen.push(...desk.rows.filter((r) => !/(?<!told)\.\.( |$)/.test(r.trim())));
  const read = () => {
    const whole = OPENED.includes(place) ? '' : readOut(desk.state).join(' ');
    for (const name of begunIn(whole)) begun.add(name);
    press('pagedown', look);
  };
  if (LISTS.includes(place)) press('down', read);
  else read();
  const all = seen.join(' ').replace(/\s+/g, ' ');
  for (const name of begunIn(all)) begun.add(name);
  return { read: all, begun };
}

describe.each(PLACES)('$place at $columns × $rows', ({ place, size }) => {
  const open = () => {
    const desk = longScreen(place, size);
    expect(desk.screen).toBe(place);
    return desk;
  };

  it('has a way back, which loses nothing and does not end the program', () => {
    const desk = open();
    const before = desk.frame;
    desk.press('escape');
    if (place !== 'wait') expect(desk.frame).not.toBe(before);
    expect(desk.done).not.toContain('quit');
  });

  it('can be left at once, also while something is written', () => {
    const desk = open();
    desk.holds = true;
    desk.press('ctrl-c');
    // What would be lost by it is asked about once.
    if (place === 'unsaved') desk.press('ctrl-c');
    desk.holds = false;
    desk.answer();
    expect(desk.done.at(-1)).toBe('quit');
  });

  it('has a list of its keys, which leads back here', () => {
    const desk = open();
    // A number typed before it begins anew behind it.
    const { view } = withoutDigits(desk.state);
    if (place === 'keys') return;
    const key = /(\S+) keys$/.exec(desk.frame)?.[1];
    expect(['?', 'Tab']).toContain(key);
    desk.press(key === 'Tab' ? 'tab' : '?');
    expect(desk.screen).toBe('keys');
    expect(readAll(desk).read).toContain(
      place === 'unsaved' ? 'give this mark up' : 'back one step; nothing is lost',
    );
    expect(desk.press('escape').state.view).toEqual(view);
  });

  it('fits the terminal, and its last row names keys', () => {
    const desk = open();
    expect(desk.rows.length).toBeLessThanOrEqual(size.rows);
    expect(desk.rows.filter((row) => width(row) > size.columns)).toEqual([]);
    expect(desk.rows.at(-1)?.trimEnd()).toMatch(/\S+ keys$|Esc back$/);
  });

  it('moves where it shows not all, by the key that its count names', () => {
    const desk = open();
    const below = () =>
      [...desk.frame.matchAll(/(\d+) below/g)].reduce((sum, [, n]) => sum + Number(n), 0);
    const more = below();
    // Where lines are moved by another key than the mark, the count names it.
    const key = /PageDown\)/.test(desk.frame) ? 'pagedown' : 'down';
    for (let n = 0; n < size.rows && below() === more; n += 1) desk.press(key);
    if (more > 0) expect(below()).not.toBe(more);
  });

  it('shows each text that it begins to its end, however long', () => {
    const desk = open();
    const { read, begun } = readAll(desk);
    const cut = [...begun].filter((name) => !tellsAll(read, name));
    expect(cut).toEqual([]);
    if (!WITHOUT.includes(place)) expect(begun.size).toBeGreaterThan(0);
  });
});

/** Names of the texts of which at least the first sentence stands there. */
const begunIn = (text: string): string[] =>
  [...text.matchAll(/\b([A-Z][a-z]+)0 is told\./g)].map((m) => m[1] ?? '');

/** Screens on which no text of the file stands at its full length. */
const WITHOUT: readonly Place[] = [
  ...(['wait', 'bench', 'job', 'draw', 'settle', 'trouble', 'advice', 'answer', 'keys'] as const),
  'starts',
];

function tellsAll(read: string, name: string): boolean {
  return long(name)
    .split('. ')
    .every((sentence) => read.includes(sentence.replace(/ is told\.?$/, '')));
}
