/** What a keyboard sends. */
export const ESC = '\x1b';
export const ENTER = '\r';
export const BACKSPACE = '\x7f';
export const UP = '\x1b[A';
export const DOWN = '\x1b[B';
export const RIGHT = '\x1b[C';
export const LEFT = '\x1b[D';
export const CTRL_C = '\x03';
export const CTRL_W = '\x17';
export const CTRL_Z = '\x1a';
export const ALT_B = '\x1bb';
/** A key that does nothing: behind it the same key once more is pressed anew, not held down. */
export const LET_GO = '\x1b[5~';
/** Space, pressed anew: held down it marks one bolt and no more. */
export const SPACE = `${LET_GO} `;
export const paste = (text: string) => `\x1b[200~${text}\x1b[201~`;
