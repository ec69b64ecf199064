/** Whether a bolt has less to spare in its hole than its length may be off by: then only the hole can tell. */

import { threadOf } from '../thread/threads.ts';
import type { FitKnown } from './fit-known.ts';
import { lengthTolerance, type Tolerance } from './tolerance.ts';

export interface Close {
  /** What is left by nominal length, mm; below 0 it lacks so much. */
  spare: number;
  /** A bolt of this length may be so much longer, or shorter, mm (ISO 4759-1; inch bolts ASME B18.2.1). */
  off: number;
  /** Left to the bottom of the thread, to the end of an open hole, or of the thread that must bite. */
  at: 'bottom' | 'end' | 'bite';
}

function toleranceOf({ kind, own }: FitKnown): Tolerance | null {
  const thread = threadOf(kind.thread ?? own?.thread ?? null);
  const length = kind.length ?? own?.length ?? null;
  if (thread === null || length === null) return null;
  return lengthTolerance(length, thread.d, thread.system === 'inch');
}

/** Null where there is more to spare, where it lacks more, or where that is not known. */
export function closeOf(k: FitKnown): Close | null {
  const t = toleranceOf(k);
  if (t === null) return null;
  const nearEnd = k.by !== null && -k.by < t.plus - TINY && k.by < t.minus - TINY;
  // What belongs there may stick out behind: somebody has looked.
  if (nearEnd && !(k.open && k.kind === k.own)) {
    const off = (k.by ?? 0) > 0 ? t.minus : t.plus;
    return { spare: -(k.by ?? 0), off, at: k.open ? 'end' : 'bottom' };
  }
  const { engagement, need, reach } = k;
  const asFar = reach.farther !== null && reach.farther >= 0;
  if (engagement === null || need === null || asFar || k.kind === k.own) return null;
  const spare = engagement - need;
  const isNear = spare < t.minus - TINY && -spare < t.plus - TINY;
  return isNear ? { spare, off: spare < 0 ? t.plus : t.minus, at: 'bite' } : null;
}

/** What binary fractions add. */
const TINY = 1e-6;

const mm = (value: number) => `${Math.round(Math.abs(value) * 100) / 100} mm`;

/** `Only 0.2 mm to spare, and its length may be off by 0.42 mm: probe it.` */
export function sayClose({ spare, off, at }: Close): string {
  if (at === 'end') {
    const ends = spare < 0 ? `${mm(spare)} behind the hole` : `${mm(spare)} before the hole does`;
    return `It ends ${ends}, and its length may be off by ${mm(off)}: look behind, or probe it.`;
  }
  const what = at === 'bottom' ? '' : ' of bite';
  const left =
    spare < 0 ? `It lacks only ${mm(spare)}${what}` : `Only ${mm(spare)}${what} to spare`;
  return `${left}, and its length may be off by ${mm(off)}: probe it.`;
}
