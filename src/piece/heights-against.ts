/**
 * What measured heights are held against: the hole's own measures, or the middle of its like. With r and a of a hole
 * (see bolt/fit/reach.ts) a head that was dropped in and not turned stands r − a off its seat. All in mm.
 */
import type { Kind, RowItem } from '../model/types.ts';
import { printItem } from './row.ts';

/**
 * Heights nearer than this are one height. Length of a bolt ± 0.6 (ISO 4759-1, product grade A, up to 80 mm long; from
 * memory), a ruler ± 0.5, and where the thread starts to bite up to a pitch of 1: together 2, and still less than half
 * of the 5 mm in which lengths step.
 */
const NEAR = 2;

export interface HeightHole {
  name: string;
  takes: RowItem | null;
  /** As measured; null: not measured. */
  mm: number | null;
  /** r − a of its own bolt, where that is known. */
  expects: number | null;
}

/** What a hole is held against. */
export interface Reference {
  /** Where its own bolt would stand; below 0 it would not reach the thread, and stand on its seat. */
  mm: number;
  /** `measures` of the hole, or the `others` that take the same. */
  from: 'measures' | 'others';
  /** May be off by so much. */
  within: number;
}

export type MeasuredHoles = HeightHole & { mm: number; item: string };

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  const [low, high] = [sorted[Math.ceil(half) - 1] ?? 0, sorted[Math.floor(half)] ?? 0];
  return (low + high) / 2;
}

/** 1.4826 × median of the distances from the median: the standard deviation, if no bolt were wrong (Rousseeuw, Croux 1993). */
function spread(values: readonly number[], middle: number): number {
  return 1.4826 * median(values.map((v) => Math.abs(v - middle)));
}

/** Heads that the whole piece is judged by. */
const ENOUGH = 3;

/**
 * How much higher than expected all heads stand alike; 0 when they do not. At least three whose height is known, none of
 * them where it should be, and more than half within 2 mm of the middle one.
 */
function shiftOf(measured: readonly MeasuredHoles[]): number {
  const off = measured.flatMap((h) =>
    h.expects === null ? [] : [h.mm - standingProud(h.expects)],
  );
  // One head that stands as it should shows that the piece is down.
  if (off.length < ENOUGH || off.some((d) => Math.abs(d) <= NEAR)) return 0;
  const middle = median(off);
  const alike = off.filter((d) => Math.abs(d - middle) <= NEAR).length;
  return alike * 2 > off.length ? middle : 0;
}

/** A head does not stand below its seat. */
export function standingProud(height: number): number {
  return Math.max(0, height);
}

/**
 * The middle of the heights of one item, where more than half stand within 2 mm of it; odd is what is farther off than
 * 2 mm and than three spreads. Null when they stand at several heights.
 */
function middleOf(heights: readonly number[]): Omit<Reference, 'from'> | null {
  const middle = median(heights);
  const sorted = [...heights].sort((a, b) => a - b);
  // From a head that stands there, not from the gap between two: else two that are 4 mm apart would agree.
  const inMiddle = [Math.ceil(sorted.length / 2) - 1, Math.floor(sorted.length / 2)];
  const agree = inMiddle.map((i) => {
    const from = sorted[i] ?? 0;
    return heights.filter((h) => Math.abs(h - from) <= NEAR).length;
  });
  if (heights.length < 2 || Math.max(...agree) * 2 <= heights.length) return null;
  return { mm: middle, within: Math.max(NEAR, 3 * spread(heights, middle)) };
}

export function measuredOf(holes: readonly HeightHole[]): MeasuredHoles[] {
  return holes.flatMap((h) =>
    h.mm === null || h.takes === null ? [] : [{ ...h, mm: h.mm, item: printItem(h.takes) }],
  );
}

/**
 * What each measured hole is held against: its own measures, moved by what all are off alike; else the middle of the
 * others that take the same. Holes of which neither is known are not in it.
 */
export function references(holes: readonly HeightHole[]): Map<string, Reference> {
  const measured = measuredOf(holes);
  const shift = shiftOf(measured);
  const found = new Map<string, Reference>();
  for (const group of heightGroups(measured).values()) {
    const middle = middleOf(group.map((h) => h.mm));
    for (const h of group) if (middle) found.set(h.name, { ...middle, from: 'others' });
  }
  for (const h of measured) {
    if (h.expects === null) continue;
    found.set(h.name, { mm: h.expects + shift, from: 'measures', within: NEAR });
  }
  return found;
}

/** How much higher (or lower, negative) all heads stand alike; 0 when they do not. */
export function notDown(holes: readonly HeightHole[]): number {
  return shiftOf(measuredOf(holes));
}

/** Measured holes whose own height is not known, by what they take. */
export function heightGroups(measured: readonly MeasuredHoles[]): Map<string, MeasuredHoles[]> {
  const groups = new Map<string, MeasuredHoles[]>();
  for (const h of measured) {
    if (h.expects === null) groups.set(h.item, [...(groups.get(h.item) ?? []), h]);
  }
  return groups;
}

/** Where a bolt of another kind would stand in this hole; null where a length is not known. */
export function heightOf(
  reference: Reference,
  takes: string,
  holds: string,
  kinds: ReadonlyMap<string, Kind>,
): number | null {
  const [own, other] = [kinds.get(takes)?.length ?? null, kinds.get(holds)?.length ?? null];
  if (takes === holds) return standingProud(reference.mm);
  return own === null || other === null ? null : standingProud(reference.mm + other - own);
}
