/** Threads that start in each other's holes and ruin them. */

import { printNumber } from '../read/numbers.ts';
import { type British, britishOf } from './british.ts';
import { threadOf } from './threads.ts';

export interface LookAlike {
  a: string;
  b: string;
  /** One sentence: how they differ and what happens. */
  why: string;
}

interface Shape {
  name: string;
  /** Outside diameter and pitch, mm. */
  d: number;
  pitch: number;
  taper: boolean;
  /** Between the flanks, degrees. */
  flanks: number;
}

/**
 * Pipe threads of plugs and senders: outside diameter mm, threads per inch, tapered. ASME B1.20.1, ISO 7-1 and
 * ISO 228-1, from memory.
 */
const PIPES: readonly [RegExp, string, number, number, boolean][] = [
  [/^1\/8 NPTF?$/i, '1/8 NPT', 10.287, 27, true],
  [/^1\/4 NPTF?$/i, '1/4 NPT', 13.716, 18, true],
  [/^3\/8 NPTF?$/i, '3/8 NPT', 17.145, 18, true],
  [/^(?:Rc? ?1\/8|1\/8 BSPT)$/i, 'R 1/8', 9.728, 28, true],
  [/^(?:Rc? ?1\/4|1\/4 BSPT)$/i, 'R 1/4', 13.157, 19, true],
  [/^(?:Rc? ?3\/8|3\/8 BSPT)$/i, 'R 3/8', 16.662, 19, true],
  [/^(?:G ?1\/8|1\/8 BSPP?)$/i, 'G 1/8', 9.728, 28, false],
  [/^(?:G ?1\/4|1\/4 BSPP?)$/i, 'G 1/4', 13.157, 19, false],
  [/^(?:G ?3\/8|3\/8 BSPP?)$/i, 'G 3/8', 16.662, 19, false],
];

function shapeOf(text: string): Shape | null {
  const said = text.trim().replace(/["″]/g, '');
  const pipe = PIPES.find(([pattern]) => pattern.test(said));
  if (pipe) {
    const [, name, d, n, taper] = pipe;
    return { name, d, pitch: 25.4 / n, taper, flanks: /NPT/.test(name) ? 60 : 55 };
  }
  const t = threadOf(said);
  if (t) return { name: t.name, d: t.d, pitch: t.pitch, taper: false, flanks: 60 };
  const british = britishOf(said);
  return british && shapeOfBritish(british);
}

function shapeOfBritish({ name, d, pitch, flanks }: British): Shape | null {
  return d === null || pitch === null ? null : { name, d, pitch, taper: false, flanks };
}

/** 1/4 inch and M6 lie 5.8 % apart, the furthest of those that the trade mixes up (common practice, no source). */
const NEAR = 0.06;
/** Of two diameters, one starts in the other only while the pitches are this close (common practice, no source). */
const STARTS = 0.35;

function alike(s: Shape, t: Shape): boolean {
  if (s.name === t.name) return false;
  const apart = Math.abs(s.d - t.d) / Math.min(s.d, t.d);
  const pitches = Math.abs(s.pitch - t.pitch) / Math.min(s.pitch, t.pitch);
  return apart <= NEAR && (apart < 1e-9 || s.taper || t.taper || pitches <= STARTS);
}

/** Diameters and pitches nearer than this go together all the way (common practice, no source). */
const TOGETHER = 0.005;

function why(s: Shape, t: Shape): string {
  const size = (x: Shape) => `${printNumber(x.d, 3)} mm, pitch ${printNumber(x.pitch, 3)}`;
  const facts = `${s.name} is ${size(s)}; ${t.name} is ${size(t)}`;
  if (s.taper || t.taper) {
    return `${facts}. A taper thread wedges, and splits the boss before it seals: read the old plug first.`;
  }
  const one =
    Math.abs(s.d - t.d) < TOGETHER * s.d && Math.abs(s.pitch - t.pitch) < TOGETHER * s.pitch;
  if (one && s.flanks !== t.flanks) {
    return `${facts}. They turn into each other, but the flanks stand at ${s.flanks} and ${t.flanks} degrees and touch on a line: it strips.`;
  }
  return `${facts}. One starts in the other, then jams or strips it: try it by fingers, all the way.`;
}

/** Pairs among these threads that look alike, each once, in the order given. Unknown threads are passed over. */
export function lookAlikes(threads: readonly string[]): LookAlike[] {
  const shapes = new Map<string, Shape>();
  for (const text of threads) {
    const s = shapeOf(text);
    if (s && !shapes.has(s.name)) shapes.set(s.name, s);
  }
  const all = [...shapes.values()];
  return all.flatMap((s, i) =>
    all
      .slice(i + 1)
      .filter((t) => alike(s, t))
      .map((t) => ({ a: s.name, b: t.name, why: why(s, t) })),
  );
}
