/** Which key a press is, and which keys can be reached. */
import type { HeldKey } from '../base/key.ts';
import type { Open } from '../base/screen.ts';
import type { Press } from '../kit/press.ts';

/** Keys that take letters, digits or text as such come before all others. */
export function keyOf(open: Open, press: Press): HeldKey | null {
  const keys = open.keys();
  const taking = keys.find((key) => key.takes?.(press) && key.holds());
  return taking ?? keys.find((key) => key.presses.includes(press) && key.holds()) ?? null;
}

export interface ShownKey {
  key: HeldKey;
  /** The presses that do it just now: a letter that is a kind of this job is no other key beside it. */
  presses: Press[];
}

/** The rows that hold and can be reached, with the presses that reach them. */
export function shownKeys(open: Open): ShownKey[] {
  const holding = open.keys().filter((key) => key.holds());
  const taking = holding.filter((key) => key.takes !== null);
  const reached = new Map<Press, HeldKey>();
  for (const key of holding) {
    for (const press of key.presses) {
      if (!reached.has(press)) reached.set(press, taking.find((t) => t.takes?.(press)) ?? key);
    }
  }
  return holding.flatMap((key) => {
    const presses = key.presses.filter((press) => reached.get(press) === key);
    return presses.length > 0 || key.takes ? [{ key, presses }] : [];
  });
}
