/** What a terminal is left like, read from all the bytes that a program wrote. */

const MODE = /\x1b\[\?(\d+)([hl])/g;

/** Modes that were turned on and not off again, in the order of the last word on each. Empty: all is as it was. */
export function leftOn(bytes: string): string[] {
  const now = new Map<string, string>();
  for (const [, mode = '', how = ''] of bytes.matchAll(MODE)) now.set(mode, how);
  // The cursor is the one mode that is on to begin with.
  const wrong = [...now].filter(([mode, how]) => (mode === '25' ? how === 'l' : how === 'h'));
  return wrong.map(([mode]) => mode);
}

/** How often the alternate screen was entered and left. */
export function alternateScreens(bytes: string): { entered: number; left: number } {
  return {
    entered: bytes.split('\x1b[?1049h').length - 1,
    left: bytes.split('\x1b[?1049l').length - 1,
  };
}

/** What was written after the alternate screen was left. */
export function afterwards(bytes: string): string {
  return bytes.slice(bytes.lastIndexOf('\x1b[?1049l'));
}
