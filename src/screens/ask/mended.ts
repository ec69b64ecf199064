/** How a hole was mended: what is asked, by what the piece is. */
import { notByList } from '../../plan/care/trouble-advice.ts';
import type { State } from '../base/state.ts';

export function questionMended(state: State, key: string, hole: string): string[] {
  const piece = state.open?.job.pieces.get(key);
  const keeps = piece ? notByList(piece.spec) : null;
  if (keeps !== null) {
    return [
      `How was ${hole} mended, and by whom?`,
      `It keeps ${keeps}: not by a list. A new part, or a licensed mechanic.`,
      'New part. Insert M6, by the brake shop.',
      'Its bolt goes in again then, and all are gone round again.',
    ];
  }
  return [
    `How was ${hole} mended?`,
    'Wire insert M6 x 9. Solid insert. Stud. Bigger bolt, M8x25. New part.',
    'Its bolt goes in again then, and all are gone round again.',
  ];
}
