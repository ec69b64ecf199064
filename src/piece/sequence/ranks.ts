/** Who comes before whom: `first:`, then groups, the larger before the smaller, the inner before the rim. */
import type { PieceSpec } from '../../model/types.ts';
import { compareHoles } from '../names.ts';

/** Group of each hole that has one, as `group:` says. */
export function groupsOf(spec: Pick<PieceSpec, 'holes'>): Map<string, string> {
  const groups = new Map<string, string>();
  for (const hole of spec.holes.values())
    if (hole.group !== null) groups.set(hole.name, hole.group);
  return groups;
}

/**
 * Place of each hole's group. Groups called by a number go by it, and what is in no group follows them, or leads where
 * they begin behind 1. Groups with a name, and then the rest, go by their largest bolt, then by their first hole.
 */
export function groupPlaces(
  names: readonly string[],
  groups: ReadonlyMap<string, string>,
  sizes: readonly number[],
): number[] {
  const of = names.map((name) => groups.get(name) ?? null);
  const met = [...new Set(of)];
  const largest = (group: string | null) =>
    Math.min(...sizes.filter((_, i) => of[i] === group), Number.MAX_SAFE_INTEGER);
  const isNumbered = (group: string | null) => group !== null && /^[0-9]/.test(group);
  const numbered = met.filter(isNumbered);
  numbered.sort((a, b) => compareHoles(a ?? '', b ?? ''));
  const others = met.filter((group) => !isNumbered(group));
  const last = (group: string | null) => (group === null ? 1 : 0);
  others.sort(
    (a, b) => largest(a) - largest(b) || last(a) - last(b) || met.indexOf(a) - met.indexOf(b),
  );
  const behind = numbered.length > 0 && Number.parseInt(numbered[0] ?? '', 10) > 1;
  const leads = behind ? others.filter((group): boolean => group === null) : [];
  const order = [...leads, ...numbered, ...others.filter((group) => !leads.includes(group))];
  return of.map((group) => order.indexOf(group));
}

export interface Ranked {
  first: readonly string[];
  groups: ReadonlyMap<string, string>;
  /** As in `Pull`: 0 for the largest. None: all alike. */
  sizes: readonly number[];
  /** Farther inside than the rim. None: no hole is. */
  inside: readonly boolean[];
}

/** One rank for each name, lower first, counted from 0 without gaps. `first` in the order given. */
export function ranks(
  names: readonly string[],
  { first, groups, sizes, inside }: Ranked,
): number[] {
  const places = groupPlaces(names, groups, sizes);
  const keys = names.map((name, i) => {
    const lead = first.indexOf(name);
    if (lead >= 0) return [0, lead, 0, 0];
    return [1, places[i] ?? 0, sizes[i] ?? 0, inside[i] === true ? 0 : 1];
  });
  const sorted = [...keys].sort(compare);
  const order = sorted.filter((key, k) => k === 0 || compare(sorted[k - 1] ?? [], key) !== 0);
  return keys.map((key) => order.findIndex((one) => compare(one, key) === 0));
}

function compare(a: readonly number[], b: readonly number[]): number {
  const differ = a.findIndex((value, k) => value !== b[k]);
  return differ < 0 ? 0 : (a[differ] ?? 0) - (b[differ] ?? 0);
}
