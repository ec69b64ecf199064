/** What the trace of a fault knows: the rows to be marked, suspects first, then what can be looked at. */

import { type OpenTry, openTries } from '../../job/fold/tries.ts';
import type { Job } from '../../model/types.ts';
import { type TraceRow, traceRows } from '../../plan/trace/say.ts';
import { type Traced, traced } from '../../plan/trace/traced.ts';
import type { Look } from '../../trace/types.ts';
import { type OnJob, onJob } from '../base/moves.ts';
import type { State, View } from '../base/state.ts';

export type TraceView = Extract<View, { screen: 'trace' }>;

export interface OnTrace extends OnJob<TraceView> {
  now: Traced;
  suspects: readonly TraceRow[];
  looks: readonly Look[];
  tries: readonly OpenTry[];
  /** Names of the rows, `?coil` a suspect, `!spark` a look. */
  names: readonly string[];
  marked: string | null;
  /** What the marked row is; null where it is the other. */
  suspect: string | null;
  look: Look | null;
}

const suspectRow = (name: string): string => `?${name}`;
const lookRow = (name: string): string => `!${name}`;

/** Where nobody has moved, the next look is marked; behind the last one what was found, which no key finds again. */
export function onTrace(state: State, view: TraceView): OnTrace | null {
  const here = onJob(state, view);
  if (!here) return null;
  const { job } = here;
  const now = traced(job);
  const suspects = traceRows(job, now);
  const names = [
    ...suspects.map(({ name }) => suspectRow(name)),
    ...now.ahead.map(({ check }) => lookRow(check)),
  ];
  const marked = markedOf(view.here, names, now);
  const suspect = suspects.find(({ name }) => suspectRow(name) === marked)?.name ?? null;
  const look = now.ahead.find(({ check }) => lookRow(check) === marked) ?? null;
  return {
    ...here,
    now,
    suspects,
    looks: now.ahead,
    tries: openTries(job),
    names,
    marked,
    suspect,
    look,
  };
}

function markedOf(
  here: string | null,
  names: readonly string[],
  { next, found, mending }: Traced,
): string | null {
  if (here !== null && names.includes(here)) return here;
  const look = next && !mending ? lookRow(next.check) : null;
  const was = found.at(-1);
  const known = [look, was && suspectRow(was.suspect)].find((one) => one && names.includes(one));
  return known ?? names[0] ?? null;
}

/** Somebody has something to trace in this job. */
export const hasTrace = ({ upper }: Job): boolean => upper.suspects.size + upper.checks.size > 0;
