/**
 * What the plan asks of pieces and tasks beyond what every job file says; where a file says nothing of it, the
 * answers are empty.
 */
import type { PieceSpec, TaskSpec } from '../../model/types.ts';
import { readDuration } from '../time/duration.ts';

/** Keys as they stand in the file. */
export interface MoreSaid {
  /** Pieces with which this one comes off, without a step of its own. */
  along?: readonly string[];
  /** Pieces between which this one is a bridge: it comes off before any of them. */
  bridges?: readonly string[];
  /** How long it takes by hand: `20 min`. */
  takes?: string | null;
  /** When a test or an adjustment is due: `hot`, `next day`, `after 100 km`. */
  when?: string | null;
}

export interface More {
  along: readonly string[];
  bridges: readonly string[];
  /** Seconds, null when not said. */
  takes: number | null;
  when: string | null;
}

export function more(spec: (PieceSpec | TaskSpec) & MoreSaid): More {
  return {
    along: spec.along ?? [],
    bridges: spec.bridges ?? [],
    takes: spec.takes ? (readDuration(spec.takes)?.seconds ?? null) : null,
    when: spec.when ?? null,
  };
}
