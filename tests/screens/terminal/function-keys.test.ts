/**
 * The sequences of keys without a letter: xterm's control sequences ("PC-Style Function Keys", and terminfo's kf13 to kf24
 * of xterm), DEC VT220 (F6 to F20), the Linux console (F1 to F5), the kitty keyboard protocol (its table of functional
 * keys).
 */
import { describe, expect, it } from 'vitest';
import { typedIn } from '../../../src/screens/terminal/bytes.ts';
import { createCleaner } from '../../../src/screens/terminal/stdin.ts';

const KEYS: [string, string][] = [
  ['\x1bOP', 'f1'],
  ['\x1bOS', 'f4'],
  ['\x1b[11~', 'f1'],
  ['\x1b[[A', 'f1'],
  ['\x1b[[E', 'f5'],
  ['\x1b[15~', 'f5'],
  ['\x1b[17~', 'f6'],
  ['\x1b[24~', 'f12'],
  ['\x1b[25~', 'f13'],
  ['\x1b[34~', 'f20'],
  ['\x1b[1;2P', 'f13'],
  ['\x1b[15;2~', 'f17'],
  ['\x1b[24;2~', 'f24'],
  ['\x1b[57376u', 'f13'],
  ['\x1b[57387u', 'f24'],
  ['\x1b[57376;1:1u', 'f13'],
  ['\x1b[2~', 'insert'],
];

function typed(bytes: string, chords = true) {
  const cleaner = createCleaner();
  return typedIn(cleaner.push(bytes) + cleaner.quiet(), chords);
}

describe('a key without a letter', () => {
  it.each(KEYS)('%j is %s', (bytes, press) => {
    expect(typed(`a${bytes}b`)).toEqual(['a', press, 'b'].map((one) => ({ press: one })));
  });

  it.each(['\x1b[15;5~', '\x1b[1;3P', '\x1b[57376;1:3u', '\x1b[1;1:3P', '\x1b[57399u', '\x1b[99~'])(
    '%j with Ctrl or Alt, let go or unknown: nothing',
    (bytes) => {
      expect(typed(`a${bytes}b`)).toEqual([{ press: 'a' }, { press: 'b' }]);
    },
  );

  it('in two pieces it is one key', () => {
    const cleaner = createCleaner();
    expect(cleaner.push('\x1b[2')).toBe('');
    expect(typedIn(cleaner.push('5~'), true)).toEqual([{ press: 'f13' }]);
  });

  it('Esc and a letter: with Alt from a keyboard, one after the other from a pipe', () => {
    expect(typed('\x1bq')).toEqual([]);
    expect(typed('\x1bq', false)).toEqual([{ press: 'escape' }, { press: 'q' }]);
    expect(typed('\x1b[A', false)).toEqual([{ press: 'up' }]);
  });
});
