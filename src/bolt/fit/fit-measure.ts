/** What would make a verdict sure, in the order in which it is least trouble to measure. */
import type { FitKnown } from './fit-known.ts';
import type { FitVerdict, Measure } from './fit-types.ts';
import type { Place } from './reach.ts';
import { headsAgree, shanksAgree, threadsAgree } from './same.ts';

/** How to measure what is missing. */
export const MEASURES: Record<Measure, string> = {
  length: 'measure the bolt under the head',
  thread: 'try the thread against one that is known',
  head: 'compare the heads',
  thick: 'measure the piece from the seat of the head to the joint face',
  turns: 'count the turns as the right bolt comes out',
  probe: 'probe the hole: depth of thread from the joint face',
  under: 'measure what lies under the head',
  into: 'say what it is screwed into',
};

/** What to measure next; nothing else helps before the lengths are known. */
export function wanted(
  k: FitKnown,
  place: Place,
  verdict: FitVerdict | null,
  sure: boolean,
): Measure[] {
  if (sure) return [];
  const { kind, own, reach } = k;
  const settled = verdict === 'same' || verdict === 'right';
  const noLength = kind.length === null || (own !== null && own.length === null);
  const list: [Measure, boolean][] = [
    ['turns', k.disputed],
    ['probe', k.disputed],
    ['length', noLength],
    ['under', reach.needsStack],
    ['turns', verdict === 'same' && own !== null && !shanksAgree(kind, own) && reach.x === null],
    ['thread', own !== null && threadsAgree(kind, own) === null],
    ['head', verdict === 'same' && own !== null && headsAgree(kind, own) === null],
  ];
  const figures: [Measure, boolean][] = [
    ['turns', reach.x === null && own !== null],
    [
      'thick',
      reach.xMost === null &&
        own === null &&
        (place.hole?.thick ?? place.piece?.thick ?? null) === null,
    ],
    ['probe', k.by === null && !reach.clear && reach.depth === null],
    ['into', k.material === null && (reach.farther ?? -1) < 0],
  ];
  const all = settled || (noLength && reach.x === null) ? list : [...list, ...figures];
  return [...new Set(all.filter(([, missing]) => missing).map(([what]) => what))];
}
