/** Layouts to try orders on, from numbered seeds; and the questions put in one line. */
import { computedOrder } from '../../../src/piece/sequence/computed.ts';
import { type Point, type Task, vectors } from '../../../src/piece/sequence/vectors.ts';

/** Numbers from 0 to 1 that are the same at every run (mulberry32). */
export function seeded(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const turn = (a: number, r = 1): Point => ({ x: r * Math.cos(a), y: r * Math.sin(a) });

export function times<T>(n: number, make: (i: number) => T): T[] {
  return Array.from({ length: n }, (_, i) => make(i));
}

/**
 * Bergström's family, which comes closest to the bound of the plane: k pulls (±√(1−e²), −e) each, e = 1/(2k),
 * and one (0, 1).
 */
export function extremal(k: number): Point[] {
  const e = 1 / (2 * k);
  const c = Math.sqrt(1 - e * e);
  return [
    { x: 0, y: 1 },
    ...times(k, () => ({ x: c, y: -e })),
    ...times(k, () => ({ x: -c, y: -e })),
  ];
}

/** Families of layouts of about n holes, by name. */
export const FAMILIES: Record<string, (n: number, random: () => number) => Point[]> = {
  scattered: (n, random) => times(n, () => turn(random() * 7, Math.sqrt(random()))),
  'an uneven rim': (n, random) =>
    times(n, (i) => {
      const a = (2 * Math.PI * (i + 0.6 * random())) / n;
      const r = 1 + 0.3 * random() + 0.4 * Math.cos(2 * a);
      return { x: 1.4 * r * Math.cos(a), y: r * Math.sin(a) };
    }),
  'a circle, unevenly spaced': (n, random) => times(n, () => turn(random() * 7)),
  'extremal, shaken': (n, random) =>
    extremal(Math.floor((n - 1) / 2)).map(({ x, y }) => ({
      x: x + 0.05 * (random() - 0.5),
      y: y + 0.05 * (random() - 0.5),
    })),
  'on a grid': (n, random) =>
    times(n, () => ({ x: Math.floor(random() * 9), y: Math.floor(random() * 7) })),
  'three corners': (n, random) =>
    times(n, (i) => {
      const { x, y } = turn(((i % 3) * 2 * Math.PI) / 3);
      return { x: x + 0.1 * (random() - 0.5), y: y + 0.1 * (random() - 0.5) };
    }),
  'three far out': (n, random) =>
    times(n, (i) => (i < n - 3 ? turn(random() * 7, 0.3 * random()) : turn(random() * 7))),
};

export function taskOf(points: readonly Point[], given: Partial<Omit<Task, 'v'>> = {}): Task {
  const v = vectors(points);
  const done = given.done ?? [];
  const left = given.left ?? [...v.x.keys()].filter((i) => !done.includes(i));
  return { v, rank: given.rank ?? times(v.n, () => 0), done, left };
}

export function compute(points: readonly Point[], given: Partial<Omit<Task, 'v'>> = {}) {
  const task = taskOf(points, given);
  return { task, ...computedOrder(task) };
}
