import { describe, expect, it } from 'vitest';
import { AROUND } from '../../../src/screens/base/page.ts';
import type { State } from '../../../src/screens/base/state.ts';
import { paint } from '../../../src/screens/kit/paint.ts';
import { keyName } from '../../../src/screens/kit/press.ts';
import { width } from '../../../src/screens/kit/text.ts';
import { foot } from '../../../src/screens/show/foot.ts';
import { keyOf, shownKeys } from '../../../src/screens/show/keys.ts';
import { rowsOf } from '../../../src/screens/show/picture.ts';
import { KEYS, openOf } from '../../../src/screens/show/screens.ts';
import { everyScreen } from '../every-screen.ts';

const SCREENS = everyScreen();

/** All lines of the list of keys, screen by screen. */
function listOf(state: State): string {
  const lines: string[] = [];
  for (let top = 0; ; top += state.rows - AROUND - 1) {
    const now: State = { ...state, view: { screen: 'keys', under: state.view, top } };
    lines.push(...rowsOf(now).slice(2, -1));
    if (top >= openOf(now).laid().over) break;
  }
  return lines.filter((l) => !/^\(\d+ (?:above|below)/.test(l)).join('\n');
}

describe('the table of keys', () => {
  it('says of a key the same on every screen that has it', () => {
    const rows = SCREENS.flatMap((s) => openOf(s.state).keys());
    const odd = KEYS.filter(({ id, presses, help }) =>
      rows.some((r) => r.id === id && (r.help !== help || `${r.presses}` !== `${presses}`)),
    );
    expect(odd.map((k) => k.id)).toEqual([]);
    expect(KEYS.filter(({ id }) => !rows.some((r) => r.id === id))).toEqual([]);
  });

  it('has each key in the list of some screen, with its help', () => {
    const lists = SCREENS.map((s) => listOf(s.state).replace(/\s+/g, ' '));
    const missing = KEYS.filter((k) => !lists.some((l) => l.includes(k.help)));
    expect(missing.map((k) => k.id)).toEqual([]);
  });

  it.each(SCREENS.map((s) => [s.name, s.state] as const))(
    '%s: every key that holds is listed, and reached',
    (_name, state) => {
      const list = listOf(state).replace(/\s+/g, ' ');
      const open = openOf(state);
      for (const key of open.keys().filter((k) => k.holds())) expect(list).toContain(key.help);
      for (const { key, presses } of shownKeys(open)) {
        for (const press of presses) expect(keyOf(open, press)).toBe(key);
      }
    },
  );

  it.each(SCREENS.map((s) => [s.name, s.state] as const))(
    '%s: no press means two keys',
    (_name, state) => {
      const presses = shownKeys(openOf(state)).flatMap((s) => s.presses);
      expect(presses.filter((p, i) => presses.indexOf(p) !== i)).toEqual([]);
    },
  );

  it.each(SCREENS.map((s) => [s.name, s.state] as const))(
    '%s: the foot fits, and the list of keys is always named',
    (_name, state) => {
      for (let columns = 60; columns <= 120; columns += 1) {
        const line = foot(openOf(state), columns);
        expect(width(line)).toBeLessThanOrEqual(columns);
        expect(paint(line, { colour: false, ascii: true })).toMatch(/(\?|Tab) keys$/);
      }
    },
  );

  it('needs neither Shift nor a chord: each key has a plain press', () => {
    const shifted = /^[A-Z!"#$%&*()_+{}|:<>?~^@]$/;
    const bad = KEYS.filter(
      (k) =>
        k.presses.length > 0 && k.presses.every((p) => shifted.test(p) || /^(ctrl|alt)-/.test(p)),
    );
    // Leaving at once is what every terminal program does with Ctrl-C, and q does it as well. For a thread that
    // turns there is the list of troubles, with the thread at its head.
    expect(bad.map((k) => k.id)).toEqual(['leave', 'leave-unsaved', 'pulled']);
  });

  it('says names of keys as they stand on a keyboard', () => {
    expect(['space', 'ctrl-c', 'escape', 'a'].map(keyName)).toEqual([
      'Space',
      'Ctrl-C',
      'Esc',
      'a',
    ]);
  });
});
