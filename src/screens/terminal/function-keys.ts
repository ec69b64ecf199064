/**
 * Keys without a letter that a pedal or a small keyboard can be made to send, F1 to F24 and Insert: their sequences as
 * characters of a private plane, which no keyboard types and which Ink hands on as they are.
 */
import type { Press } from '../kit/press.ts';

/** F0 would stand here; Insert does. */
const FIRST = 0x10f000;
const COUNT = 24;

/** Numbers before `~` of F1 to F20 (DEC VT220, rxvt, xterm). */
const NUMBERS = [11, 12, 13, 14, 15, 17, 18, 19, 20, 21, 23, 24, 25, 26, 28, 29, 31, 32, 33, 34];
/** Number before `u` of F13 (the kitty keyboard protocol, "Functional key definitions"). */
const KITTY_F13 = 57376;
/** With Shift the twelve F keys of a keyboard are F13 to F24 (terminfo's `kf13` of xterm). */
const SHIFTED = 12;

const SEQUENCE =
  /^\x1b(?:O([P-S])|\[\[([A-E])|\[(?:1;(\d+)(?::(\d))?)?([PQRS])|\[(\d+)(?:;(\d+)(?::(\d))?)?([~u]))$/;

/** The character for a whole sequence; empty where the key was let go; null: it is another key, or has Ctrl or Alt with it. */
export function functionKey(sequence: string): string | null {
  const found = SEQUENCE.exec(sequence);
  if (found === null) return null;
  const [, ss3, console, chord, event, letter, number, chord2, event2, end] = found;
  const n =
    number === undefined
      ? console === undefined
        ? 'PQRS'.indexOf(ss3 ?? letter ?? '') + 1
        : 'ABCDE'.indexOf(console) + 1
      : numbered(Number(number), end);
  if (n === null) return null;
  const held = Number(chord ?? chord2 ?? 1);
  if (held > 2) return null;
  if ((event ?? event2) === '3') return '';
  const key = held === 2 && n >= 1 && n <= SHIFTED ? n + SHIFTED : n;
  return String.fromCodePoint(FIRST + key);
}

function numbered(number: number, end: string | undefined): number | null {
  if (end === 'u') {
    const key = number - KITTY_F13 + 13;
    return key >= 13 && key <= COUNT ? key : null;
  }
  if (number === 2) return 0;
  const at = NUMBERS.indexOf(number);
  return at < 0 ? null : at + 1;
}

/** The press of such a character; null: it is another one. */
export function functionPress(character: string): Press | null {
  const key = (character.codePointAt(0) ?? 0) - FIRST;
  if (key < 0 || key > COUNT) return null;
  return key === 0 ? 'insert' : `f${key}`;
}
