import { describe, expect, it } from 'vitest';
import { lineIs } from '../../../src/plan/typed/line-is.ts';

describe('what one line is', () => {
  it.each([
    ['6204 bearing', 'buy'],
    ['2 sealing washers 14 mm', 'buy'],
    ['hose 8 mm', 'buy'],
    ['HL-1142 B', 'buy'],
    ['coil 0.4 ohm', 'test'],
    ['battery 12.4 V', 'test'],
    ['valve clearance 0.10..0.15 mm', 'test'],
    ['weeps when hot?', 'test'],
    ['spring, goggles!', 'caution'],
    ['never turn it by the magnet', 'caution'],
    ['take the slack out of the chain 25 mm', 'adjust'],
    ['set the points 0.4 mm', 'adjust'],
    ['scrape both faces', 'do'],
    ['fit a new seal', 'do'],
    ['drive the old bearings out, heat the hub', 'do'],
    ['hang the caliper on a wire', 'do'],
    ['axle nut 65 Nm', 'do'],
    ['seal both faces', 'do'],
    ['grease 3 holes', 'do'],
    ['seal 28x42x7', 'buy'],
    ['oil 10W-40 2 l', 'buy'],
    ['plug CR8E', 'buy'],
    ['pilot screw 2 turns out', 'adjust'],
    ['renew the shaft seal?', 'decide'],
    ['weld it or a new one?', 'decide'],
    ['let the sealant cure 24 h', 'wait'],
    ['top bolt last, so that it hangs', 'tip'],
    ['the old gasket was in two pieces', 'note'],
    ['brown sludge behind it', 'note'],
  ])('%s: %s', (text, as) => {
    expect(lineIs(text)).toEqual({ as, text });
  });

  it('a word before it says what it is, whatever follows', () => {
    expect(lineIs('tip: 6204 bearing')).toEqual({ as: 'tip', text: '6204 bearing' });
    expect(lineIs('Buy 6204 bearing')).toEqual({ as: 'buy', text: '6204 bearing' });
    expect(lineIs('check: spark at the plug')).toEqual({ as: 'check', text: 'spark at the plug' });
  });

  it('a word with a colon that says nothing of it stays', () => {
    expect(lineIs('left: brown sludge').text).toBe('left: brown sludge');
  });
});
