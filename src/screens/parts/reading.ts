/** What the file gives to read before a piece comes off or goes back. */
import type { PieceSpec } from '../../job/types.ts';

export interface Reading {
  what: 'Caution' | 'Tip' | 'Joint' | 'Loose' | 'Marks' | 'Routes' | 'Note';
  texts: readonly string[];
}

/** A tip blocks nothing, and a note is no warning: alone they are not put in the way. */
const BESIDE: readonly string[] = ['Tip', 'Note'];

/** Something that is to be read before, and not merely good to know. */
export function mustRead(spec: PieceSpec, way: 'removal' | 'fitting'): boolean {
  return toRead(spec, way).some((r) => !BESIDE.includes(r.what));
}

export function toRead(spec: PieceSpec, way: 'removal' | 'fitting'): Reading[] {
  const joint: Reading[] = way === 'fitting' ? [{ what: 'Joint', texts: spec.joint }] : [];
  const all: Reading[] = [
    { what: 'Caution', texts: spec.caution[way] },
    ...joint,
    { what: 'Loose', texts: spec.loose },
    { what: 'Marks', texts: spec.marks },
    { what: 'Routes', texts: spec.routes },
    { what: 'Tip', texts: spec.tip[way] },
    { what: 'Note', texts: spec.note === null ? [] : [spec.note] },
  ];
  return all.filter((r) => r.texts.length > 0);
}
