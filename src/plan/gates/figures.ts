/** Which text of the file an item of a gate was made from. */
import type { Correctable, Job, Moment, PieceSpec } from '../../model/types.ts';
import type { Of } from '../known/rows.ts';
import { type KnownRow, knownRows } from '../known/rows.ts';
import { readJoint } from '../seal/joint.ts';
import { itemOf } from './item-rows.ts';

export interface Behind {
  of: Of;
  rows: KnownRow[];
  /** How what the item says is printed, where that is not so. */
  printed: string[];
}

/** Null where the item says nothing that stands in the file. */
export function behindItem(
  job: Job,
  moment: Moment,
  piece: string | null,
  item: string,
): Behind | null {
  const found = itemOf(item);
  if (!found?.row.from) return null;
  const { from } = found.row;
  if ('task' in from) {
    if (!job.tasks.has(found.about)) return null;
    const rows = knownRows(job, { task: found.about }).filter((r) => isOneOf(from.task, r));
    return behind({ task: found.about }, rows);
  }
  const spec = job.pieces.get(piece ?? '')?.spec;
  if (piece === null || !spec) return null;
  const known = knownRows(job, { piece });
  const all = known.filter((r) => isOneOf([from.piece], r) && r.figure?.hole === undefined);
  const number = Number(found.about);
  const rows = WHICH[from.which]({ all, spec, moment, number });
  const [row] = rows;
  if (from.which === 'part' && row) {
    return { of: { piece }, rows, printed: printedPart(known, row, number) };
  }
  return behind({ piece }, rows);
}

function isOneOf(whats: readonly Correctable[], { figure }: KnownRow): boolean {
  return figure !== null && whats.includes(figure.what);
}

function behind(of: Of, rows: KnownRow[]): Behind | null {
  return rows.length === 0 ? null : { of, rows, printed: rows.flatMap((r) => r.printed ?? []) };
}

interface Among {
  /** The rows of the key that the item is made from. */
  all: readonly KnownRow[];
  spec: PieceSpec;
  moment: Moment;
  /** The number behind the item's name; 0 without one. */
  number: number;
}

type FromPiece = Extract<NonNullable<ReturnType<typeof itemOf>>['row']['from'], { piece: unknown }>;

/** Which of the rows of its key an item is made from. */
const WHICH: Readonly<Record<FromPiece['which'], (among: Among) => KnownRow[]>> = {
  all: ({ all }) => [...all],
  nth: ({ all, number }) => (number === 0 ? [...all] : all.slice(number - 1, number)),
  way: ({ all, spec, moment, number }) => {
    const early = moment === 'prying' || moment === 'loosening';
    const way = early ? 'removal' : 'fitting';
    const said = spec.caution[way][number - 1];
    return all.filter((r) => said !== undefined && r.figure?.said.includes(said));
  },
  part: ({ all, number }) => jointWith(all, number),
};

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
