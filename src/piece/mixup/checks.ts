/** Where to look first, and for what. */
import { compareHoles } from '../names.ts';
import { mm } from '../words.ts';
import type { Tray } from './tray.ts';
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

/** `check` of a mixup: heights that fit no kind, then holes that the count puts in doubt, then those that explain it. */
export function checks(
  tray: Tray,
  list: readonly Explanation[],
  count: Mixup['count'],
): Mixup['check'] {
  const looks = new Looks();
  for (const { name, mm: height, alike } of tray.odd) {
    const why = alike
      ? 'and all others are off alike: see that the piece is down, then measure again.'
      : 'as no kind here would: measure it again.';
    looks.add(name, `It stands ${mm(height)} off, ${why}`);
  }
  if (count === null) ofExplanations(list, looks);
  const doubted = (over: boolean) => (_: unknown, kind: number) =>
    over ? (tray.over[kind] ?? 0) > 0 : (tray.over[kind] ?? 0) < 0;
  if (count !== null && count.over > 0) {
    const names = tray.full.filter(doubted(true)).flat();
    for (const name of names.map((h) => h.name).sort(compareHoles)) {
      looks.add(name, 'Is there a bolt in it at all?');
    }
  }
  if (count !== null && count.over < 0) {
    for (const name of tray.empty.filter(doubted(false)).flat().sort(compareHoles)) {
      looks.add(name, 'Is it really empty?');
    }
  }
  return looks.all();
}
