/** Who comes before whom: `first:`, then groups. */
import type { PieceSpec } from '../../model/types.ts';
import { compareHoles } from '../names.ts';

/**
 * Group of each hole that has one: as `group:` says; else holes with the same torque of their own are a group.
 */
export function groupsOf(spec: Pick<PieceSpec, 'holes'>): Map<string, string> {
  const groups = new Map<string, string>();
  for (const hole of spec.holes.values()) {
    const group = hole.group ?? hole.torque?.text ?? null;
    if (group !== null) groups.set(hole.name, group);
  }
  return groups;
}

/** Groups called by a number go by it; others follow in the order of their first hole; the rest comes last. */
function groupOrder(names: readonly string[], groups: ReadonlyMap<string, string>): string[] {
  const met = [...new Set(names.flatMap((name) => groups.get(name) ?? []))];
  const numbered = met.filter((group) => /^[0-9]/.test(group)).sort(compareHoles);
  return [...numbered, ...met.filter((group) => !numbered.includes(group))];
}

/** One rank for each name, lower first. `first` in the order given. */
export function ranks(
  names: readonly string[],
  first: readonly string[],
  groups: ReadonlyMap<string, string>,
): number[] {
  const order = groupOrder(names, groups);
  return names.map((name) => {
    const lead = first.indexOf(name);
    if (lead >= 0) return lead - first.length;
    const group = groups.get(name);
    return group === undefined ? order.length : order.indexOf(group);
  });
}
