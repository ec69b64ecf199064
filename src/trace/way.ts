/** The way found for the bare problem, told in names. */
import type { Reduced } from './reduce.ts';
import type { Node } from './search/node.ts';
import type { Look, TraceWay } from './types.ts';

/** Null where no check tells anything. `covers` are the minutes of each, by name. */
export function wayOf(
  { groups, checks }: Reduced,
  covers: ReadonlyMap<string, number>,
  root: Node,
): TraceWay | null {
  const from = ({ best, S }: Node, off: readonly string[]): TraceWay | string[] => {
    const check = best && checks[best.option.j];
    if (!check) return S.flatMap((i) => groups[i] ?? []);
    const opens = check.behind.filter((name) => !off.includes(name));
    const minutes = opens.reduce((sum, name) => sum + (covers.get(name) ?? 0), check.minutes);
    const after = [...off, ...opens];
    const [good, bad] = [from(best.good, after), from(best.bad, after)];
    return { check: check.name, minutes, opens, good, bad };
  };
  const way = from(root, []);
  return Array.isArray(way) ? null : way;
}

/** The look that begins a way, and what it would leave, in the order of `left`. */
export function lookOf(
  { check, minutes, opens, good, bad }: TraceWay,
  left: readonly string[],
): Look {
  const among = (way: TraceWay | string[]) => {
    const names = new Set(namesIn(way));
    return left.filter((name) => names.has(name));
  };
  return { check, minutes, opens, good: among(good), bad: among(bad) };
}

const namesIn = (way: TraceWay | string[]): string[] =>
  Array.isArray(way) ? way : [...namesIn(way.good), ...namesIn(way.bad)];
