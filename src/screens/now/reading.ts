/** What the file gives to read before a piece comes off or goes back. */
import type { PieceSpec } from '../../model/types.ts';
import { cautionsFor } from '../../plan/cautions.ts';

export interface Reading {
  what: 'Caution' | 'Bolts' | 'Tip' | 'Joint' | 'Loose' | 'Marks' | 'Routes' | 'Note';
  texts: readonly string[];
}

/** What is put in the way. A tip blocks nothing, a note is no warning, what falls out is said when it does. */
const FIRST: Readonly<Record<'removal' | 'fitting', readonly Reading['what'][]>> = {
  removal: ['Caution', 'Marks', 'Routes'],
  fitting: ['Caution', 'Joint', 'Loose', 'Marks', 'Routes'],
};

/** Something that is to be read before, and not merely good to know. */
export function mustRead(spec: PieceSpec, way: 'removal' | 'fitting'): boolean {
  return toRead(spec, way).some((r) => FIRST[way].includes(r.what));
}

/** The file's own first, then what is said of such a piece anywhere, and whose word goes first. */
function cautions(spec: PieceSpec, way: 'removal' | 'fitting'): string[] {
  return cautionsFor(spec, way === 'removal' ? 'off' : 'on').map((c) => c.say);
}

export function toRead(spec: PieceSpec, way: 'removal' | 'fitting'): Reading[] {
  const joint: Reading[] = way === 'fitting' ? [{ what: 'Joint', texts: spec.joint }] : [];
  const all: Reading[] = [
    { what: 'Caution', texts: cautions(spec, way) },
    ...joint,
    { what: 'Loose', texts: spec.loose },
    { what: 'Marks', texts: spec.marks },
    { what: 'Routes', texts: spec.routes },
    { what: 'Tip', texts: spec.tip[way] },
    { what: 'Note', texts: spec.note === null ? [] : [spec.note] },
  ];
  return all.filter((r) => r.texts.length > 0);
}
