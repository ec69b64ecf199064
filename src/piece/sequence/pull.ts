/**
 * How hard each bolt of a piece pulls, and which of them are the larger: by its thread and its torque.
 *
 * F = T / (K d), with K (the friction) taken as the same for all, so that only T / d counts. Where a torque is not
 * known, or bolts are turned by an angle at the end, F goes with the stress area (or d²): bolts of one piece are taken as used
 * to the same share of what they hold. Where no thread is known, T goes with d³ and F with d², so F with T^(2/3).
 */

import { convert } from '../../bolt/read/units.ts';
import { threadOf } from '../../bolt/thread/threads.ts';
import { readStages } from '../../bolt/torque/stages.ts';
import { kept } from '../../model/kept.ts';
import type { Kind, PieceSpec } from '../../model/types.ts';

export interface Pull {
  /** As a share of the hardest pull of the piece: 0 < force ≤ 1. */
  force: number;
  /** 0 for the largest bolts, then the next: by diameter, and of one diameter by torque. */
  size: number;
}

interface Known {
  bolt: Bolt | null;
  /** N·m; null where it is not read. */
  torque: number | null;
  angle: boolean;
}

interface Bolt {
  /** Diameter, mm. */
  d: number;
  /** Stress area, mm²; null for a thread without figures. */
  area: number | null;
}

/** `M9` and `M11` are in print and in no table at hand: their diameter is known all the same. */
function boltOf(thread: string | null): Bolt | null {
  const found = threadOf(thread);
  if (found) return { d: found.d, area: found.stressArea };
  const d = Number(/^M(\d+(?:\.\d+)?)\b/.exec(thread ?? '')?.[1] ?? Number.NaN);
  return d > 0 ? { d, area: null } : null;
}

/**
 * As a share: 5/16 in stands in for M8 and 1/4 in (5.5 % more) for M6, and such are one size; of metric sizes no two are
 * so near.
 */
const NEARLY = 0.06;

type Spec = Pick<PieceSpec, 'row' | 'torque' | 'holes'>;
type Kinds = ReadonlyMap<string, Kind>;

/** One for each name, in that order. Each mark asks it again. */
export function pullsOf(spec: Spec, kinds: Kinds, names: readonly string[]): readonly Pull[] {
  return kept(spec, `pulls of ${names.join(' ')}`, () => pullsFor(spec, kinds, names), kinds);
}

function pullsFor(spec: Spec, kinds: Kinds, names: readonly string[]): Pull[] {
  const read = new Map<string, Omit<Known, 'bolt'>>();
  const said = (text: string) => {
    const found = read.get(text) ?? torqueIn(text);
    read.set(text, found);
    return found;
  };
  const bolts = names.map((_, i) => boltOf(kinds.get(spec.row?.[i]?.kind ?? '')?.thread ?? null));
  const usual = mostOf(bolts);
  const known = names.map((name, i): Known => {
    const text = (spec.holes.get(name)?.torque ?? spec.torque)?.text ?? '';
    return { bolt: bolts[i] ?? usual, ...said(text) };
  });
  const forces = known.map(forceOf(known));
  const most = Math.max(...forces);
  const sizes = sizesOf(known);
  return forces.map((force, i) => ({ force: force / most, size: sizes[i] ?? 0 }));
}

function torqueIn(text: string): Omit<Known, 'bolt'> {
  const { stages } = readStages(text);
  const torques = stages.flatMap((s) => (s.do === 'torque' ? [s.quantity] : []));
  const full = torques.at(-1);
  const torque = full ? convert(full.value, full.unit, 'N·m') : null;
  return {
    torque: torque !== null && torque > 0 ? torque : null,
    angle: stages.some((s) => s.do === 'angle'),
  };
}

/** What most of them are: a bolt of which nothing is known is taken as one of those. */
function mostOf(bolts: readonly (Bolt | null)[]): Bolt | null {
  const all = bolts.filter((b) => b !== null);
  const counts = new Map<number, number>();
  for (const { d } of all) counts.set(d, (counts.get(d) ?? 0) + 1);
  const count = ({ d }: Bolt) => counts.get(d) ?? 0;
  return all.reduce<Bolt | null>((most, b) => (most && count(most) >= count(b) ? most : b), null);
}

function forceOf(all: readonly Known[]): (known: Known) => number {
  const bolts = all.every((k) => k.bolt !== null);
  const areas = all.every((k) => k.bolt !== null && k.bolt.area !== null);
  const torques = all.every((k) => k.torque !== null);
  if (bolts && torques && !all.some((k) => k.angle)) {
    return ({ bolt, torque }) => (torque ?? 0) / (bolt?.d ?? 1);
  }
  if (areas) return ({ bolt }) => bolt?.area ?? 1;
  if (bolts) return ({ bolt }) => (bolt?.d ?? 1) ** 2;
  if (torques) return ({ torque }) => (torque ?? 0) ** (2 / 3);
  return () => 1;
}

/** Largest diameter first; of one diameter the higher torque, and what is not read last. */
function sizesOf(all: readonly Known[]): number[] {
  const diameters = steps(
    all.map((k) => k.bolt?.d ?? 0),
    NEARLY,
  );
  const torques = steps(
    all.map((k) => k.torque ?? 0),
    1e-9,
  );
  const own = all.map((_, i) => (diameters[i] ?? 0) * all.length + (torques[i] ?? 0));
  const order = [...new Set(own)].sort((a, b) => a - b);
  return own.map((size) => order.indexOf(size));
}

/** For each value its step downward from the largest: values less by no more than this share are one. */
function steps(values: readonly number[], within: number): number[] {
  const heads: number[] = [];
  for (const value of [...new Set(values)].sort((a, b) => b - a)) {
    const head = heads.at(-1);
    if (head === undefined || value < head * (1 - within)) heads.push(value);
  }
  return values.map((value) => heads.findIndex((head) => value >= head * (1 - within)));
}
