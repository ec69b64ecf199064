/** The rows of the page of all that is known, and which one is marked. */

import { type KnownRow, knownRows } from '../../plan/known/rows.ts';
import { type OnJob, onJob } from '../base/moves.ts';
import type { State, View } from '../base/state.ts';

type KnownView = Extract<View, { screen: 'known' }>;

export interface OnKnown extends OnJob<KnownView> {
  rows: readonly KnownRow[];
  /** The marked one. */
  row: KnownRow | null;
}

export function knownHere(state: State, view: KnownView): OnKnown | null {
  const here = onJob(state, view);
  if (!here) return null;
  const rows = rowsOf(here);
  return { ...here, rows, row: rowAt(rows, view.here) };
}

/** Those that were asked about come first, then what is said, then what is not said yet. */
function rowsOf({ job, view }: OnJob<KnownView>): KnownRow[] {
  const rows = knownRows(job, view.of);
  const first = view.first.flatMap((id) => rows.find((r) => r.id === id) ?? []);
  return [...first, ...rows.filter((r) => !first.includes(r))];
}

function rowAt(rows: readonly KnownRow[], here: string | null): KnownRow | null {
  if (here === null) return rows[0] ?? null;
  // Where the marked row was taken back, another row of its kind is marked.
  const alike = rows.findLast((r) => kindOf(r.id) === kindOf(here));
  return rows.find((r) => r.id === here) ?? alike ?? rows[0] ?? null;
}

/** `marks 2` and `+ marks` are both of `marks`. */
function kindOf(id: string): string {
  return id.replace(/^[+ ]+| \d+$/g, '');
}
