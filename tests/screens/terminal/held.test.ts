import { describe, expect, it } from 'vitest';
import { type HeldPress, tellPresses } from '../../../src/screens/terminal/held.ts';

/** Presses at these times, ms. */
function told(...presses: [number, string][]): HeldPress[] {
  let now = 0;
  const tell = tellPresses(() => now);
  return presses.map(([when, press]) => {
    now = when;
    return tell(press);
  });
}

const at = (...presses: [number, string][]): boolean[] => told(...presses).map((t) => t.held);

describe('a key that is still down', () => {
  it('is told from one that is pressed anew, the wait before the first repeat included', () => {
    expect(at([0, 'enter'], [660, 'enter'], [690, 'enter'], [720, 'enter'])).toEqual([
      false,
      true,
      true,
      true,
    ]);
    expect(at([0, 'enter'], [1500, 'enter'])).toEqual([false, false]);
  });

  it('is another one behind another key', () => {
    expect(at([0, 'enter'], [5, 'space'], [10, 'enter'])).toEqual([false, false, false]);
  });

  it('all of one burst is one press', () => {
    expect(at([0, 'enter'], [0, 'enter'], [0, 'enter'])).toEqual([false, true, true]);
  });
});

describe('a key that the keyboard repeats by itself', () => {
  const repeats = (...times: number[]) =>
    told(...times.map((t): [number, string] => [t, 'space'])).map((t) => t.repeats);

  it('is told by the third repeat, and no more once it was let go', () => {
    expect(repeats(0, 500, 530, 560, 590, 620, 1000)).toEqual([
      false,
      false,
      false,
      true,
      true,
      true,
      false,
    ]);
  });

  it('is no hand that taps, nor what came in at once behind a slow frame', () => {
    expect(repeats(0, 110, 220, 330, 440, 550)).not.toContain(true);
    expect(repeats(0, 0, 0, 1, 1, 1, 1)).not.toContain(true);
  });
});

describe('a text that is typed without looking', () => {
  it('is told by its letters following each other, whichever they are', () => {
    const typed = told([0, 'n'], [180, 'o'], [700, 'space'], [900, 'w'], [901, 'enter']);
    expect(typed.map((t) => t.soon)).toEqual([false, true, false, true, true]);
    expect(typed.map((t) => t.held)).not.toContain(true);
  });
});
