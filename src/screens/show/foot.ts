/** The keys of this screen, from the table: the line at the foot and the names of keys. */

import type { State } from '../base/state.ts';
import { keyName } from '../kit/press.ts';
import { type Line, line, span, width } from '../kit/text.ts';
import { shownKeys } from './which.ts';

interface Hint {
  id: string;
  key: string;
  label: string;
}

/** Never left out: from there all other keys are found. */
const ALWAYS: readonly string[] = ['keys', 'keys-typing'];
const GAP = 3;

/** As many keys as fit, the least important left out first; the list of keys is always named. */
export function foot(state: State, columns: number): Line {
  const hints = shownKeys(state).flatMap(({ key, presses }): Hint[] => {
    const label = typeof key.label === 'string' ? key.label : key.label(state);
    const [first] = presses;
    return label === '' || first === undefined ? [] : [{ id: key.id, key: keyName(first), label }];
  });
  const last = hints.filter((h) => ALWAYS.includes(h.id));
  const rest = hints.filter((h) => !last.includes(h));
  while (rest.length > 0 && width(drawn([...rest, ...last])) > columns) rest.pop();
  return drawn([...rest, ...last]);
}

function drawn(hints: readonly Hint[]): Line {
  return line(
    ...hints.flatMap((h, i) => [
      i > 0 && ' '.repeat(GAP),
      span(h.key, { bold: true }),
      ` ${h.label}`,
    ]),
  );
}
