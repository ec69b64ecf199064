/** The keys of this screen, from the table: the line at the foot and the names of keys. */

import type { Open } from '../base/screen.ts';
import { keyName } from '../kit/press.ts';
import { type Line, line, span, width } from '../kit/text.ts';
import { shownKeys } from './keys.ts';

interface Hint {
  key: string;
  label: string;
  leadsOn: boolean;
}

const GAP = 3;

/** As many keys as fit, the least important left out first; the list of keys is always named. */
export function foot(open: Open, columns: number): Line {
  const { rest, last } = parts(open);
  while (rest.length > 0 && width(drawn([...rest, ...last])) > columns) rest.pop();
  return drawn([...rest, ...last]);
}

/** All of them, one by one, in the same order. */
export function hints(open: Open): Line[] {
  const { rest, last } = parts(open);
  return [...rest, ...last].map((hint) => drawn([hint]));
}

function parts(open: Open): { rest: Hint[]; last: Hint[] } {
  const all = shownKeys(open).flatMap(({ key, presses }): Hint[] => {
    const label = key.label();
    const [first] = presses;
    if (label === '' || first === undefined) return [];
    return [{ key: keyName(first), label, leadsOn: key.leadsOn === true }];
  });
  return { rest: all.filter((h) => !h.leadsOn), last: all.filter((h) => h.leadsOn) };
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
