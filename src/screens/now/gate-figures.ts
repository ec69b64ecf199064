/** Which text of the file an item of a gate was made from. */
import type { Job, Moment, PieceSpec } from '../../model/types.ts';
import { readJoint } from '../../plan/joint.ts';
import type { Of } from './known-rows.ts';
import { type KnownRow, knownRows } from './known-rows.ts';

export interface Behind {
  of: Of;
  rows: KnownRow[];
  /** How what the item says is printed, where that is not so. */
  printed: string[];
}

/** Items that are made from a task. */
const OF_TASKS: readonly string[] = ['task', 'wait', 'fill', 'adjust'];

/** Null where the item says nothing that stands in the file. */
export function behindItem(
  job: Job,
  moment: Moment,
  piece: string | null,
  item: string,
): Behind | null {
  const [name = '', rest = ''] = cutAt(item);
  if (OF_TASKS.includes(name) && job.tasks.has(rest)) {
    const what: readonly unknown[] = name === 'adjust' ? ['step', 'limit'] : ['step'];
    const rows = knownRows(job, { task: rest }).filter((r) => what.includes(r.figure?.what));
    return behind({ task: rest }, rows);
  }
  if (piece === null) return null;
  const spec = job.pieces.get(piece)?.spec;
  if (!spec) return null;
  const rows = ofPiece(knownRows(job, { piece }), spec, moment, name, Number(rest));
  const [row] = rows;
  if (name === 'joint' && row) {
    return {
      of: { piece },
      rows,
      printed: printedPart(knownRows(job, { piece }), row, Number(rest)),
    };
  }
  return behind({ piece }, rows);
}

function behind(of: Of, rows: KnownRow[]): Behind | null {
  return rows.length === 0 ? null : { of, rows, printed: rows.flatMap((r) => r.printed ?? []) };
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
      const way = moment === 'prying' || moment === 'loosening' ? 'removal' : 'fitting';
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
  return rows.filter((row) => partAt(rows, row, number) !== undefined).slice(0, 1);
}

/** Which part of this text, from 0; undefined where the item is of another one. */
function partAt(rows: readonly KnownRow[], row: KnownRow, number: number): number | undefined {
  const before = rows.slice(0, rows.indexOf(row)).flatMap((r) => readJoint([r.text]).parts).length;
  const index = number - 1 - before;
  return index >= 0 && index < readJoint([row.text]).parts.length ? index : undefined;
}

/** The same part of the printed text; the whole of it where the two have not as many parts. */
function printedPart(known: readonly KnownRow[], row: KnownRow, number: number): string[] {
  if (row.printed === null) return [];
  const joints = known.filter((r) => r.figure?.what === 'joint');
  const index = partAt(joints, row, number) ?? 0;
  const [says, was] = [readJoint([row.text]).parts, readJoint([row.printed]).parts];
  if (says.length !== was.length) return [row.printed];
  const part = was[index];
  return part === undefined || part === says[index] ? [] : [part];
}
