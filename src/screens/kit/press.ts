/** Presses of keys, and their names as they stand on a keyboard. */

/**
 * A key press: `space`, `enter`, `backspace`, `up`, `down`, `left`, `right`, `escape`, `tab`, `delete`,
 * `home`, `end`, `pageup`, `pagedown`, `insert`, `f1` to `f24`, `ctrl-` and a letter, or one grapheme.
 */
export type Press = string;

/** Presses that a user has given to keys, by the name of the key. */
export type OwnPresses = Readonly<Record<string, readonly Press[]>>;

const NAMES: Readonly<Record<Press, string>> = {
  space: 'Space',
  enter: 'Enter',
  backspace: 'Backspace',
  escape: 'Esc',
  tab: 'Tab',
  up: 'Up',
  down: 'Down',
  left: 'Left',
  right: 'Right',
  home: 'Home',
  end: 'End',
  delete: 'Delete',
  pageup: 'PageUp',
  pagedown: 'PageDown',
  insert: 'Insert',
  // What a pedal is made to send where no letter is free.
  ...Object.fromEntries(Array.from({ length: 24 }, (_, i) => [`f${i + 1}`, `F${i + 1}`])),
};

/** What else is printed on such keys, and which of them a terminal cannot tell from a chord with Ctrl. */
const ALSO: Readonly<Record<string, Press>> = {
  return: 'enter',
  del: 'delete',
  ins: 'insert',
  pgup: 'pageup',
  pgdn: 'pagedown',
  'ctrl-h': 'backspace',
  'ctrl-i': 'tab',
  'ctrl-j': 'enter',
  'ctrl-m': 'enter',
};

const WORDS: ReadonlyMap<string, Press> = new Map([
  ...Object.entries(NAMES).flatMap(([press, name]): [string, Press][] => [
    [press, press],
    [name.toLowerCase(), press],
  ]),
  ...Object.entries(ALSO),
]);

/** Presses by name, for a name that is nearly one. */
export const PRESS_NAMES: readonly string[] = [...WORDS.keys()];

/** The press that somebody writes as `Space`, `PageDown`, `ctrl-n`, `f13`, `x`; null: there is none of that name. */
export function pressNamed(text: string): Press | null {
  const word = text.trim().toLowerCase();
  const named = WORDS.get(word);
  if (named !== undefined) return named;
  // Ctrl-Z stops the program, as it stops any.
  if (/^ctrl-[a-y]$/.test(word)) return word;
  return [...text].length === 1 && /^[\p{L}\p{N}\p{P}\p{S}]$/u.test(text) ? text : null;
}

export function keyName(press: Press): string {
  return NAMES[press] ?? press.replace(/^ctrl-(.*)/, (_, k: string) => `Ctrl-${k.toUpperCase()}`);
}
