import { describe, expect, it } from 'vitest';
import { heldPresses } from '../../../src/screens/terminal/held.ts';

/** Presses at these times, ms. */
function at(...presses: [number, string][]): boolean[] {
  let now = 0;
  const held = heldPresses(() => now);
  return presses.map(([when, press]) => {
    now = when;
    return held(press);
  });
}

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
