/** Presses of keys, and their names as they stand on a keyboard. */

/**
 * A key press: `space`, `enter`, `backspace`, `up`, `down`, `left`, `right`, `escape`, `tab`, `delete`,
 * `home`, `end`, `pageup`, `pagedown`, `ctrl-` and a letter, or one grapheme.
 */
export type Press = string;

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
};

export function keyName(press: Press): string {
  return NAMES[press] ?? press.replace(/^ctrl-(.*)/, (_, k: string) => `Ctrl-${k.toUpperCase()}`);
}
