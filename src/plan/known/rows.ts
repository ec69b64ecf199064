/** All that is known of a piece or a task, row by row, and what may be said of it and is not yet. */

import { type Figure, figuresOf } from '../../job/truth/corrections.ts';
import { kept } from '../../model/kept.ts';
import type { Keys, KeysWith } from '../../model/keys/key-row.ts';
import type { HOLE_KEYS, PIECE_KEYS } from '../../model/keys/keys.ts';
import {
  type Correctable,
  isSeveral,
  type KnownKey,
  labelOf,
  namesPieces,
  needsBolts,
  OFFERED,
  WRITABLE,
  type Writable,
} from '../../model/keys/known-keys.ts';
import type { HoleSpec, Job, PieceNow, PieceSpec, RowItem } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { printRow, UNKNOWN } from '../../piece/row.ts';
import { figureLabel } from './words.ts';

/** What something is known of. */
export type Of = { piece: string } | { task: string };

export interface KnownRow {
  /** The same before and after it was corrected. */
  id: string;
  label: string;
  /** As it counts; of what is not said yet what it is for. */
  text: string;
  printed: string | null;
  /** What stands in the file and may be not so here. */
  figure: Figure | null;
  /** Where one more text goes, or the first one. */
  write: Writable | null;
  said: boolean;
}

export function knownRows(job: Job, of: Of): KnownRow[] {
  const name = 'piece' in of ? `known of piece ${of.piece}` : `known of task ${of.task}`;
  return kept(job, name, () => makeRows(job, of));
}

function makeRows(job: Job, of: Of): KnownRow[] {
  const figures = figureRows(figuresOf(job, of));
  if ('task' in of) return figures;
  const piece = job.pieces.get(of.piece);
  if (!piece) return figures;
  const said = [...nameRows(job, piece.spec), ...figures, ...plainRows(piece)];
  return [...said, ...offered(piece, said)];
}

function figureRows(figures: readonly Figure[]): KnownRow[] {
  const met = new Map<string, number>();
  return figures.map((figure): KnownRow => {
    const { what, hole, way, text, printed } = figure;
    const kind = [hole, what, way].filter((t) => t !== undefined).join(' ');
    const count = (met.get(kind) ?? 0) + 1;
    met.set(kind, count);
    const ofPiece = hole === undefined && figure.piece !== undefined;
    return {
      id: `${kind} ${count}`,
      label: figureLabel(figure),
      text,
      printed,
      figure,
      write: ofPiece ? (WRITABLE.find((key) => key === what && isSeveral(key)) ?? null) : null,
      said: true,
    };
  });
}

function plain(what: KnownKey, text: string, write: Writable | null = null, hole = ''): KnownRow {
  const label = hole === '' ? labelOf(what) : `${hole}: ${labelOf(what).toLowerCase()}`;
  return { id: `${hole} ${what}`, label, text, printed: null, figure: null, write, said: true };
}

/** What is over it, what it comes with, what it runs between. */
function nameRows(job: Job, spec: PieceSpec): KnownRow[] {
  const named = (keys: readonly string[]) =>
    list(keys.map((key) => job.pieces.get(key)?.spec.name ?? key));
  return WRITABLE.filter(namesPieces).flatMap((what) => {
    const keys = spec[what];
    return keys.length === 0 ? [] : [plain(what, named(keys), what)];
  });
}

/** Keys that are told and can be neither corrected nor written from here. */
type Plainly<K extends Keys> = Exclude<KeysWith<K, { label: string }>, Correctable | Writable>;

/** Keys of the file that are told as they are, in words; null where the file says nothing. In the order of the rows. */
const OF_PIECE: Readonly<Record<Plainly<typeof PIECE_KEYS>, (now: PieceNow) => string | null>> = {
  first: ({ spec }) => (spec.first.length > 0 ? list(spec.first) : null),
  tray: ({ spec, tray }) => tray ?? spec.tray,
};
const OF_HOLE: Readonly<Record<Plainly<typeof HOLE_KEYS>, (hole: HoleSpec) => string | null>> = {
  wet: ({ wet }) => (wet ? 'opens into a liquid' : null),
  group: ({ group }) => group,
};

/** Where its bolts lie comes last, behind the holes. */
function plainRows(piece: PieceNow): KnownRow[] {
  const { tray, ...rest } = OF_PIECE;
  return [
    ...rowOf(piece.spec),
    ...told(rest, piece),
    ...[...piece.spec.holes.values()].flatMap((hole) => told(OF_HOLE, hole, hole.name)),
    ...told({ tray }, piece),
  ];
}

/** Its bolts as the file has them: they can be said anew from here. */
function rowOf({ row }: PieceSpec): KnownRow[] {
  return row && row.length > 0 ? [plain('bolts', boltsSaid(row), 'bolts')] : [];
}

/** `11: S S S M+clip S`; of bolts that nobody has named only how many. */
function boltsSaid(row: readonly RowItem[]): string {
  const named = row.some((item) => item.kind !== UNKNOWN);
  return named ? `${row.length}: ${printRow(row)}` : `${row.length}, nobody has named them`;
}

function told<K extends KnownKey, T>(
  says: Readonly<Partial<Record<K, (of: T) => string | null>>>,
  of: T,
  hole = '',
): KnownRow[] {
  return (Object.entries(says) as [K, (of: T) => string | null][]).flatMap(([what, say]) => {
    const text = say(of);
    return text === null ? [] : [plain(what, text, null, hole)];
  });
}

function offered({ holes }: PieceNow, said: readonly KnownRow[]): KnownRow[] {
  const there = (what: Writable) =>
    said.some((r) => r.write === what || (r.figure?.what === what && !r.figure.hole));
  return OFFERED.flatMap(([what, hint]) => {
    if (there(what) || (needsBolts(what) && holes.length === 0)) return [];
    const row = plain(what, hint, what);
    return [{ ...row, id: `+ ${what}`, said: false }];
  });
}
