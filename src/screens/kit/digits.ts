/** Digits are always holes: typed one after the other, each names the nearest thing that exists. */
import type { Press } from './press.ts';

export interface Pointed {
  /** The hole, or null when nothing is called so. */
  here: string | null;
  typed: string;
}

/** `1` and then `1` is hole 11 where there is one; a digit that leads nowhere begins anew. Null: not about holes. */
export function pressDigit(typed: string, press: Press, names: readonly string[]): Pointed | null {
  const digit = /^[0-9]$/.test(press);
  const letter = typed !== '' && /^[a-z]$/i.test(press);
  if (!digit && !letter) return null;
  const tries = letter ? [typed + press.toLowerCase()] : [typed + press, press];
  for (const text of tries) {
    if (names.includes(text)) return { here: text, typed: text };
    if (digit && names.some((n) => n.startsWith(text))) return { here: null, typed: text };
  }
  return digit ? { here: null, typed: '' } : null;
}
