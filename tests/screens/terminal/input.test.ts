import fc from 'fast-check';
import type { Key } from 'ink';
import { describe, expect, it } from 'vitest';
import { presses } from '../../../src/screens/terminal/input.ts';

const none: Key = {
  upArrow: false,
  downArrow: false,
  leftArrow: false,
  rightArrow: false,
  pageDown: false,
  pageUp: false,
  home: false,
  end: false,
  return: false,
  escape: false,
  ctrl: false,
  shift: false,
  tab: false,
  backspace: false,
  delete: false,
  meta: false,
  super: false,
  hyper: false,
  capsLock: false,
  numLock: false,
};
const key = (flags: Partial<Key>): Key => ({ ...none, ...flags });

describe('one event of Ink, press by press', () => {
  it.each([
    ['key repeat', 'jjj', ['j', 'j', 'j']],
    ['a word and Enter', 'abc\r', ['a', 'b', 'c', 'enter']],
    ['Windows line ends are one Enter', 'a\r\nb\n', ['a', 'enter', 'b', 'enter']],
    ['Tab inside', 'x\ty', ['x', 'tab', 'y']],
    ['both Backspaces', 'a\x7f\b', ['a', 'backspace', 'backspace']],
    ['Space', ' ', ['space']],
    ['a family is one press', '👨‍👩‍👧e\u0301', ['👨‍👩‍👧', 'e\u0301']],
    ['Ctrl letters inside', 'a\x03\x1a', ['a', 'ctrl-c', 'ctrl-z']],
    ['other controls are none', 'a\x00\x1c\x9bb', ['a', 'b']],
    ['nothing', '', []],
  ])('%s', (_, input, expected) => {
    expect(presses(input, none)).toEqual(expected);
  });

  it.each([
    ['an arrow', '', key({ upArrow: true }), ['up']],
    ['with Shift it stays the same', '', key({ upArrow: true, shift: true }), ['up']],
    ['with Ctrl it is another', '', key({ leftArrow: true, ctrl: true }), ['ctrl-left']],
    ['Enter', '\r', key({ return: true }), ['enter']],
    ['Esc, whatever is held', '', key({ escape: true, meta: true }), ['escape']],
    ['Shift-Tab is not Tab', '', key({ tab: true, shift: true }), []],
    ['a letter told with Shift beside it', 'ж', key({ shift: true }), ['Ж']],
    ['Ctrl-W never types w', 'w', key({ ctrl: true }), ['ctrl-w']],
    ['Alt-B never types b', 'b', key({ meta: true }), ['alt-b']],
    ['Ctrl-Alt-B is nothing', 'b', key({ ctrl: true, meta: true }), []],
    ['Alt-é is nothing', 'é', key({ meta: true }), []],
    ['Alt-2 types no digit', '2', key({ meta: true }), []],
    ['Ctrl-Space is nothing', ' ', key({ ctrl: true }), []],
    ['a key with Super', 'q', key({ super: true }), []],
    ['a key let go', 'q', key({ eventType: 'release' }), []],
    ['a key held', 'q', key({ eventType: 'repeat' }), ['q']],
    ['a function key', '', none, []],
  ])('%s', (_, input, flags, expected) => {
    expect(presses(input, flags)).toEqual(expected);
  });

  it('200 letters in one event are these 200 letters', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[a-z0-9.+!äøß]{200}$/), (text) => {
        expect(presses(text, none).join('')).toBe(text);
      }),
      { numRuns: 20 },
    );
  });
});
