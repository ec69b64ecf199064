/** Where to look first, and for what. */

import { mm } from '../../bolt/read/numbers.ts';
import { list as listOf } from '../../model/words.ts';
import { compareHoles } from '../names.ts';
import type { NoUse, Tray } from './tray.ts';
import type { Explanation, Mixup, WrongHole } from './types.ts';

/** Looks of each hole, in the order in which they came. */
class Looks {
  private readonly byHole = new Map<string, Set<string>>();

  add(hole: string, look: string): void {
    this.byHole.set(hole, (this.byHole.get(hole) ?? new Set()).add(look));
  }

  all(): Mixup['check'] {
    return [...this.byHole].map(([hole, looks]) => ({ hole, look: [...looks].join(' ') }));
  }
}

/** The holes that the explanations with the fewest wrong holes name, best first. */
function ofExplanations(list: readonly Explanation[], looks: Looks): void {
  // Explanations of one tray share their wrong holes.
  const seen = new Set<WrongHole>();
  for (const { wrong, holes } of list) {
    if (wrong !== list[0]?.wrong) break;
    for (const it of holes) {
      if (seen.has(it)) continue;
      seen.add(it);
      const { takes, holds, among, look } = it;
      for (const hole of among) looks.add(hole, `${holds} instead of ${takes}? ${look}`);
    }
  }
}

const NO_USE: Readonly<Record<NoUse, string>> = {
  alike: 'and all others are off alike: see that the piece is down, then measure again.',
  'no kind': 'as no kind here would: measure it again.',
  uneven:
    'and others that take the same stand at other heights: one of them is wrong, look at each.',
  alone: 'and nothing is known that this could be held against: measure its like, or the hole.',
  marked: 'and holds another bolt on purpose: its height was held against nothing.',
  nameless: 'and nobody noted what belongs there: its height was held against nothing.',
};

/** `check` of a mixup: heights that fit no kind, then holes that the count puts in doubt, then those that explain it. */
export function checks(
  tray: Tray,
  list: readonly Explanation[],
  count: Mixup['count'],
): Mixup['check'] {
  const looks = new Looks();
  for (const { name, mm: height, why } of tray.odd) {
    looks.add(name, `It stands ${mm(height)} off, ${NO_USE[why]}`);
  }
  if (count === null) ofExplanations(list, looks);
  // What a height shows is so, whether or not the tray can be explained by it.
  const told = new Set(count === null ? list.flatMap((e) => e.holes.flatMap((h) => h.among)) : []);
  for (const { name, from, holds, mm: height } of tray.sure) {
    if (height === null || told.has(name)) continue;
    const [takes, like] = [tray.letters[from], holds.map((kind) => tray.letters[kind] ?? '')];
    looks.add(
      name,
      `It stands ${mm(height)} off, as ${listOf(like, 'or')} would and ${takes} would not.`,
    );
  }
  const over = (kind: number) => tray.over[kind] ?? 0;
  if (count !== null && count.over > 0) {
    const names = tray.full.filter((_, kind) => over(kind) > 0).flat();
    for (const name of names.map((h) => h.name).sort(compareHoles)) {
      looks.add(name, 'Is there a bolt in it at all?');
    }
  }
  if (count !== null && count.over < 0) {
    const names = tray.empty.filter((_, kind) => over(kind) < 0).flat();
    for (const name of names.sort(compareHoles)) {
      looks.add(name, 'Is it really empty?');
    }
  }
  return looks.all();
}
