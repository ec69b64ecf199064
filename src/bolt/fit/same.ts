/** Whether two kinds are one bolt under two letters. */
import type { Kind } from '../../model/types.ts';
import { headShape } from '../read/head.ts';
import { strengthOf } from '../thread/strength.ts';
import { sameThread, threadOf } from '../thread/threads.ts';

/** Lengths nearer than this are one length, mm. */
export const SAME_LENGTH = 0.05;

/** Threads and their hand; null when one is not known. */
export function threadsAgree(a: Kind, b: Kind): boolean | null {
  return a.leftHand === b.leftHand ? sameThread(a.thread, b.thread) : false;
}

/** Shapes of the heads; null when one is not known. */
export function headsAgree(a: Kind, b: Kind): boolean | null {
  if (a.head === b.head) return true;
  const [s, t] = [headShape(a.head), headShape(b.head)];
  return s === null || t === null ? null : s === t;
}

/** How much more tensile strength the mark of `a` means than that of `b`, MPa; null when one has no figures. */
export function strongerBy(a: Kind, b: Kind): number | null {
  if (a.class === null || b.class === null) return null;
  const d = threadOf(b.thread)?.d ?? 6;
  const [s, t] = [strengthOf(a.class, d), strengthOf(b.class, d)];
  return s && t && s.tensile - t.tensile;
}

function marksAgree(a: Kind, b: Kind): boolean | null {
  if (a.class === b.class) return true;
  return a.class === null || b.class === null ? null : false;
}

function lengthsAgree(a: Kind, b: Kind): boolean | null {
  if (a.length === null || b.length === null) return null;
  return Math.abs(a.length - b.length) < SAME_LENGTH;
}

/** Plain shanks; where one is not said, nothing speaks against it. */
export function shanksAgree(a: Kind, b: Kind): boolean {
  return a.threaded === null || b.threaded === null || a.threaded === b.threaded;
}

/** Lengths first, because most bolts of a job differ in nothing else. */
const PARTS = [lengthsAgree, shanksAgree, marksAgree, threadsAgree, headsAgree];

/** True or false where it is known; null where a part of one of them is not said. */
export function sameBolt(a: Kind, b: Kind): boolean | null {
  let known: boolean | null = true;
  for (const agree of PARTS) {
    const same = agree(a, b);
    if (same === false) return false;
    if (same === null) known = null;
  }
  return known;
}
