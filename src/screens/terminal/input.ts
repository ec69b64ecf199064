/**
 * What Ink says about keys, as presses one by one.
 *
 * Fast typing, key repeat and what was typed before the start arrive in one event: `jjj`, `abc\r`. So
 * text that is not a paste is cut into graphemes, and the control characters inside it are keys.
 */
import type { Key } from 'ink';
import type { Press } from '../kit/press.ts';
import { split } from '../kit/text.ts';
import { functionPress } from './function-keys.ts';

const NAMED: readonly (readonly [keyof Key, Press])[] = [
  ['upArrow', 'up'],
  ['downArrow', 'down'],
  ['leftArrow', 'left'],
  ['rightArrow', 'right'],
  ['return', 'enter'],
  ['escape', 'escape'],
  ['tab', 'tab'],
  ['backspace', 'backspace'],
  ['delete', 'delete'],
  ['home', 'home'],
  ['end', 'end'],
  ['pageUp', 'pageup'],
  ['pageDown', 'pagedown'],
];

/** Without the kitty protocol Ctrl-I, Ctrl-M, Ctrl-J and Ctrl-H *are* these keys. */
const CONTROL: Readonly<Record<string, Press>> = {
  '\r': 'enter',
  '\n': 'enter',
  '\r\n': 'enter',
  '\t': 'tab',
  '\b': 'backspace',
  '\x7f': 'backspace',
  '\x1f': 'ctrl-_',
  ' ': 'space',
};

/** The presses of one event of `useInput`; none for a key let go or one that nothing can be bound to. */
export function presses(input: string, key: Key): Press[] {
  if (key.eventType === 'release' || key.super || key.hyper) return [];
  const named = NAMED.find(([flag]) => key[flag] === true)?.[1];
  if (named === 'escape') return [named];
  if (named !== undefined) {
    // Shift-Tab is not Tab; the other keys mean the same with Shift.
    if (named === 'tab' && key.shift) return [];
    return chord(named, key);
  }
  // A keyboard that tells of each key names the letter and Shift beside it.
  if (key.shift && /^\p{Ll}$/u.test(input)) return typedPresses(input.toUpperCase());
  if (input === '' || (!key.ctrl && !key.meta)) return typedPresses(input);
  const letter = input.toLowerCase();
  return /^([a-z]|_)$/.test(letter) ? chord(letter, key) : [];
}

/** With Ctrl or Alt a press is another press: it never falls back to the plain key. */
function chord(press: Press, key: Key): Press[] {
  if (key.ctrl && key.meta) return [];
  if (key.ctrl) return [`ctrl-${press}`];
  return [key.meta ? `alt-${press}` : press];
}

/** A text without sequences, as it was typed. */
export function typedPresses(text: string): Press[] {
  return split(text).flatMap(typed);
}

function typed(grapheme: string): Press[] {
  const control = CONTROL[grapheme] ?? functionPress(grapheme);
  if (control !== null) return [control];
  const code = grapheme.charCodeAt(0);
  if (code >= 1 && code <= 26) return [`ctrl-${String.fromCharCode(code + 96)}`];
  return code < 32 || (code >= 0x7f && code <= 0x9f) ? [] : [grapheme];
}
