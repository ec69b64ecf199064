/** Threads from their basic profile: ISO 68-1 and ISO 724 (metric), ASME B1.1 (UNC, UNF). Lengths in mm, areas in mm². */

import { remembering } from '../../model/remembering.ts';
import { INCH } from '../read/length.ts';
import { tidy } from '../read/numbers.ts';
import { INCH_SIZES, isInch, METRIC } from '../read/sizes.ts';
import { readFront } from '../read/spelling.ts';
import { type British, britishOf } from './british.ts';
import { inchDrill, metricDrill } from './tap-drills.ts';

export interface Thread {
  /** Full name: `M6x1`, `1/4-20 UNC`. */
  name: string;
  system: 'metric' | 'inch';
  series: 'coarse' | 'fine' | 'UNC' | 'UNF';
  /** Nominal (major) diameter. */
  d: number;
  /** P. */
  pitch: number;
  /** Pitch diameter, d2 = D2. */
  d2: number;
  /** Minor diameter of the bolt at the rounded root. */
  d3: number;
  /** Minor diameter of the hole, D1. */
  D1: number;
  /** Stress area: As (ISO 898-1) or At (ASME B1.1). */
  stressArea: number;
  tapDrill: number;
  /** Name of the drill in the trade's inch series, `#7` or `F`; null for metric threads. */
  drillName: string | null;
}

/** Basic profile, ISO 68-1: H = P √3/2; d2 = d − 3/4 H, D1 = d − 5/4 H, d3 = d − 17/12 H. */
function profile(d: number, P: number) {
  const H = (P * Math.sqrt(3)) / 2;
  return { d2: d - (3 / 4) * H, D1: d - (5 / 4) * H, d3: d - (17 / 12) * H };
}

function metric(d: number, P: number): Thread | null {
  const pitches = METRIC.get(d);
  if (!pitches?.includes(P)) return null;
  const { d2, D1, d3 } = profile(d, P);
  return {
    name: `M${d}x${P}`,
    system: 'metric',
    series: pitches[0] === P ? 'coarse' : 'fine',
    d,
    pitch: P,
    d2,
    d3,
    D1,
    // ISO 898-1, 9.1.6.1: As,nom = π/4 ((d2 + d3)/2)².
    stressArea: (Math.PI / 4) * ((d2 + d3) / 2) ** 2,
    tapDrill: metricDrill(d, P),
    drillName: null,
  };
}

function inch(size: string, n: number, series: 'UNC' | 'UNF'): Thread | null {
  const D = INCH_SIZES.get(size)?.D;
  const drill = inchDrill(size, n);
  if (D === undefined || drill === null) return null;
  const d = D * INCH;
  const P = INCH / n;
  return {
    name: `${size}-${n} ${series}`,
    system: 'inch',
    series,
    d: tidy(d),
    pitch: tidy(P),
    ...profile(d, P),
    // ASME B1.1, appendix B: At = 0.7854 (D − 0.9743/n)², in².
    stressArea: 0.7854 * (D - 0.9743 / n) ** 2 * INCH ** 2,
    tapDrill: tidy(drill.inches * INCH),
    drillName: drill.name,
  };
}

const METRIC_NAME = /^M([\d.]+)(?:x([\d.]+))?$/;
const INCH_NAME = /^(\d+\/\d+|\d{1,2})(?:-(\d+))?(?: (UNC|UNF))?$/;

function named(name: string): Thread | null {
  const m = METRIC_NAME.exec(name);
  if (m) {
    const d = Number(m[1]);
    const coarse = METRIC.get(d)?.[0];
    return coarse === undefined ? null : metric(d, m[2] === undefined ? coarse : Number(m[2]));
  }
  const [, size = '', n, series] = INCH_NAME.exec(name) ?? [];
  const row = INCH_SIZES.get(size);
  if (!row) return null;
  for (const s of ['UNC', 'UNF'] as const) {
    const says = (n !== undefined || series !== undefined) && (series ?? s) === s;
    if (row[s] !== null && says && Number(n ?? row[s]) === row[s]) return inch(size, row[s], s);
  }
  return null;
}

const asked = remembering((text) => named(readFront(text).thread ?? ''));

/**
 * The thread that a text names: `M6` (coarse), `M6x1`, `1/4-20`, `1/4 UNC`, `10-32 UNF x 1/2`. Null for one that
 * putback has no figures for; such a thread is accepted everywhere and said to be unchecked.
 */
export function threadOf(text: string | null): Thread | null {
  return asked(text ?? '');
}

/** Every thread that putback has figures for. */
export function allThreads(): Thread[] {
  const metrics = [...METRIC].flatMap(([d, pitches]) => pitches.map((P) => metric(d, P)));
  const inches = [...INCH_SIZES].flatMap(([size, row]) =>
    (['UNC', 'UNF'] as const).map((s) => (row[s] === null ? null : inch(size, row[s], s))),
  );
  return [...metrics, ...inches].filter((t) => t !== null);
}

/** Whether two names mean one thread; null when that cannot be known. `M6` is M6x1. */
export function sameThread(a: string | null, b: string | null): boolean | null {
  if (a === null || b === null) return null;
  if (a === b) return true;
  const [s, t] = [threadOf(a), threadOf(b)];
  if (s && t) return s.name === t.name;
  const plain = (text: string) => text.toLowerCase().replace(/\s+/g, '');
  if (plain(a) === plain(b)) return true;
  return sameSystem(systemOf(a, s), systemOf(b, t));
}

/** A thread as far as its name tells: `size` is null where that is not known for sure. */
interface System {
  /** `inch`: in inches, and not told which of the systems. */
  system: Thread['system'] | British['series'] | 'unified';
  size: string | null;
}

function systemOf(text: string, known: Thread | null): System | null {
  if (known) return { system: known.system === 'inch' ? 'unified' : 'metric', size: known.name };
  const british = britishOf(text);
  if (british) return { system: british.series, size: british.name };
  const said = text.trim();
  if (/^M\s?[\d.]/i.test(said)) return { system: 'metric', size: null };
  return isInch(said) || /^(?:Rc?|G)\s?\d/i.test(said) ? { system: 'inch', size: null } : null;
}

/** Systems differ in pitch or flanks wherever their sizes meet: 0 BA is 6 mm by 1 mm, and no M6. */
function sameSystem(f: System | null, g: System | null): boolean | null {
  if (f === null || g === null) return null;
  if (f.system === g.system) return f.size === null || g.size === null ? null : f.size === g.size;
  const other = f.system === 'inch' ? g.system : g.system === 'inch' ? f.system : null;
  return other === null || other === 'metric' || other === 'BA' ? false : null;
}

/** Which way a bolt turns, seen from its head; said only of left-hand threads, which most hands get wrong. */
export function turning(leftHand: boolean): { off: string; on: string; say: string | null } {
  return leftHand
    ? {
        off: 'clockwise',
        on: 'to the left',
        say: 'Left-hand thread: clockwise undoes it, to the left tightens it.',
      }
    : { off: 'to the left', on: 'clockwise', say: null };
}
