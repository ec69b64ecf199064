/** Presses from the bytes of a keyboard or a pipe, where no drawing library reads them. */
import type { Press } from '../kit/press.ts';
import { typedPresses } from './input.ts';

/** Final bytes and numbers of the sequences of keys (ECMA-48, and xterm's for Home, End and the page keys). */
const FINAL: Readonly<Record<string, Press>> = {
  A: 'up',
  B: 'down',
  C: 'right',
  D: 'left',
  H: 'home',
  F: 'end',
};
const NUMBERED: Readonly<Record<string, Press>> = {
  1: 'home',
  3: 'delete',
  4: 'end',
  5: 'pageup',
  6: 'pagedown',
  7: 'home',
  8: 'end',
  27: 'escape',
};

const PASTE = /\x1b\[200~([\s\S]*?)\x1b\[201~/y;
const SEQUENCE = /\x1b(?:\[([\d;]*)([A-Za-z~])|O([A-Z]))/y;

export type TypedBytes = { press: Press } | { paste: string };

/**
 * `text`: as the cleaner of a terminal's input hands it on, sequences whole. What is no key is left out. `chords`: a
 * letter right behind Esc came with Alt, as a keyboard sends it; from a pipe it is the next press.
 */
export function typedIn(text: string, chords: boolean): TypedBytes[] {
  const all: TypedBytes[] = [];
  for (let at = 0; at < text.length; ) {
    PASTE.lastIndex = at;
    SEQUENCE.lastIndex = at;
    const paste = PASTE.exec(text);
    const sequence = paste ? null : SEQUENCE.exec(text);
    if (paste) {
      all.push({ paste: paste[1] ?? '' });
      at = PASTE.lastIndex;
    } else if (sequence) {
      const press = named(sequence);
      if (press !== undefined) all.push({ press });
      at = SEQUENCE.lastIndex;
    } else if (text[at] === '\x1b') {
      // Nothing is bound to a chord with Alt.
      if (!chords) all.push({ press: 'escape' });
      at += chords ? 2 : 1;
    } else {
      const next = text.indexOf('\x1b', at);
      const end = next < 0 ? text.length : next;
      all.push(...typedPresses(text.slice(at, end)).map((press) => ({ press })));
      at = end;
    }
  }
  return all;
}

function named([, numbers = '', final = '', third = '']: RegExpExecArray): Press | undefined {
  const [number = '', chord] = numbers.split(';');
  // With Ctrl or Alt it is another press, and none that anything is bound to.
  if (chord !== undefined && chord !== '1') return undefined;
  return final === '~' || final === 'u' ? NUMBERED[number] : FINAL[final || third];
}
