/** Which text of the file an item of a gate was made from. */
import type { Job, Moment, PieceSpec } from '../../job/types.ts';
import { readJoint } from '../../plan/joint.ts';
import type { Of } from '../state.ts';
import { type KnownRow, knownRows } from './known-rows.ts';

export interface Behind {
  of: Of;
  rows: KnownRow[];
}

/** Null where the item says nothing that stands in the file. */
export function behindItem(
  job: Job,
  moment: Moment,
  piece: string | null,
  item: string,
): Behind | null {
  const [name = '', rest = ''] = cutAt(item);
  if ((name === 'task' || name === 'wait') && job.tasks.has(rest)) {
    const rows = knownRows(job, { task: rest }).filter((r) => r.figure?.what === 'step');
    return rows.length === 0 ? null : { of: { task: rest }, rows };
  }
  if (piece === null) return null;
  const spec = job.pieces.get(piece)?.spec;
  if (!spec) return null;
  const rows = ofPiece(knownRows(job, { piece }), spec, moment, name, Number(rest));
  return rows.length === 0 ? null : { of: { piece }, rows };
}

/** `caution-2` is `caution` and `2`; `task-fit-seal` is `task` and `fit-seal`. */
function cutAt(item: string): [string, string] {
  const dash = item.indexOf('-');
  return dash < 0 ? [item, ''] : [item.slice(0, dash), item.slice(dash + 1)];
}

function ofPiece(
  known: readonly KnownRow[],
  spec: PieceSpec,
  moment: Moment,
  name: string,
  number: number,
): KnownRow[] {
  const all = known.filter((r) => r.figure !== null && r.figure.hole === undefined);
  const only = (what: string) => all.filter((r) => r.figure?.what === what);
  const nth = (rows: readonly KnownRow[]) => rows.slice(number - 1, number);
  switch (name) {
    case 'caution': {
      const way = moment === 'prying' ? 'removal' : 'fitting';
      const text = spec.caution[way][number - 1];
      return only('caution').filter((r) => r.text === text && (r.figure?.way ?? way) === way);
    }
    case 'joint':
      return jointWith(only('joint'), number);
    case 'loose':
      return Number.isNaN(number) || number === 0 ? only('loose') : nth(only('loose'));
    case 'marks':
    case 'routes':
      return only(name);
    case 'wrench':
      return only('torque');
    default:
      return [];
  }
}

/** An item is a part of a text between semicolons. */
function jointWith(rows: readonly KnownRow[], number: number): KnownRow[] {
  let parts = 0;
  for (const row of rows) {
    parts += readJoint([row.text]).parts.length;
    if (number <= parts) return [row];
  }
  return [];
}
