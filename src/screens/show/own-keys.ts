/** The presses that a user has given to keys, read from the settings and held against the table. */
import type { Report } from '../../job/faults/faults.ts';
import { near } from '../../model/nearword.ts';
import type { GivenPress } from '../../settings/settings.ts';
import { wrongPresses } from '../base/own-presses.ts';
import { type OwnPresses, PRESS_NAMES, type Press, pressNamed } from '../kit/press.ts';
import { KEYS, KEYS_BY_SCREEN } from './screens.ts';

/** What of it holds; the rest is told at its place, and the key stays as it is. */
export function ownPresses(given: readonly GivenPress[], report: Report): OwnPresses {
  const own: Record<string, Press[]> = Object.create(null);
  const ids = KEYS.map((key) => key.id);
  // What these do is said by the press itself: a digit, an arrow, a letter.
  const fixed = new Map(KEYS.flatMap(({ id, shown }) => (shown ? [[id, shown] as const] : [])));
  for (const { key, press: text, at, keyAt } of given) {
    const press = pressNamed(text);
    const close = near(key, ids);
    if (!ids.includes(key)) {
      const meant = close === null ? '' : `Did you mean ${close}? `;
      report('unknown-key-name', keyAt, { value: key, near: meant });
    } else if (fixed.has(key)) report('fixed-press', keyAt, { key, is: fixed.get(key) ?? '' });
    else if (press === null) {
      const word = near(text.trim().toLowerCase(), PRESS_NAMES);
      report('bad-press', at, { value: text, near: word === null ? '' : `Did you mean ${word}? ` });
    } else own[key] = [...(own[key] ?? []), press];
  }
  for (const { id, press, clash } of wrongPresses(KEYS_BY_SCREEN, own)) {
    const place = given.find((g) => g.key === id && pressNamed(g.press) === press);
    report('press-clash', place?.at ?? 0, { value: press, key: id, other: clash });
    delete own[id];
  }
  return own;
}
