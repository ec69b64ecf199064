import { describe, expect, it } from 'vitest';
import type { State } from '../../../src/screens/base/state.ts';
import { paint } from '../../../src/screens/kit/paint.ts';
import { keyName } from '../../../src/screens/kit/press.ts';
import { width } from '../../../src/screens/kit/text.ts';
import { foot } from '../../../src/screens/show/foot.ts';
import { drawKeys } from '../../../src/screens/show/help.ts';
import { KEYS, type Place } from '../../../src/screens/show/keys.ts';
import { keyOf, keysOf, shownKeys } from '../../../src/screens/show/which.ts';
import { everyScreen } from '../every-screen.ts';

const SCREENS = everyScreen();

/** All lines of the list of keys, however long the screen. */
function listOf(state: State): string {
  const view = { screen: 'keys', under: state.view, top: 0 } as const;
  const lines = drawKeys({ ...state, view }).middle(80, 200);
  return lines.map((l) => paint(l, { colour: false, ascii: false })).join('\n');
}

describe('the table of keys', () => {
  it('is covered by the screens of this test', () => {
    const places = new Set<Place>(KEYS.flatMap((k) => [...k.places]));
    expect([...places].filter((p) => !SCREENS.some((s) => s.place === p))).toEqual([]);
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
      for (const key of keysOf(state)) expect(list).toContain(key.help);
      for (const { key, presses } of shownKeys(state)) {
        for (const press of presses) expect(keyOf(state, press)).toBe(key.id);
      }
    },
  );

  it.each(SCREENS.map((s) => [s.name, s.state] as const))(
    '%s: no press means two keys',
    (_name, state) => {
      const presses = shownKeys(state).flatMap((s) => s.presses);
      expect(presses.filter((p, i) => presses.indexOf(p) !== i)).toEqual([]);
    },
  );

  it.each(SCREENS.map((s) => [s.name, s.state] as const))(
    '%s: the foot fits, and the list of keys is always named',
    (_name, state) => {
      for (let columns = 60; columns <= 120; columns += 1) {
        const line = foot(state, columns);
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
    expect(bad.map((k) => k.id)).toEqual(['pulled', 'leave']);
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
