/** What must come off to have one piece off. */
import type { Job } from '../../model/types.ts';
import { reachable, topological, turned } from './graph.ts';
import { isAway } from './needed.ts';
import { relationsOf } from './relations.ts';

/**
 * The smallest set of pieces that must come off to have `piece` off, in the order in which they come off, itself
 * last: all that lies over it, and what tasks before it need off; what is away already is not counted. Empty when
 * it is away itself or there is no such piece.
 */
export function reach(job: Job, piece: string): string[] {
  const relations = relationsOf({
    pieces: [...job.pieces.values()].map((p) => p.spec),
    tasks: [...job.tasks.values()].map((t) => t.spec),
  });
  const { steps, graph } = relations;
  const start = relations.at.get(`${piece} off`);
  if (start === undefined) return [];
  const stands = (place: number): boolean => {
    const step = steps[place];
    if (step?.kind === 'off') {
      const now = job.pieces.get(step.key);
      return now !== undefined && !isAway(now);
    }
    return step?.kind !== 'on' && (job.tasks.get(step?.key ?? '')?.done ?? null) === null;
  };
  const needs = reachable(turned(graph), [start], stands);
  return topological(
    graph,
    steps.map((_, i) => i),
  ).flatMap((place) => {
    const step = steps[place];
    return step?.kind === 'off' && needs.has(place) && stands(place) ? [step.key] : [];
  });
}
