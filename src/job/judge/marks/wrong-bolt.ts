/** What is said when a bolt would go where it does not belong. */

import { lengthSaid } from '../../../bolt/read/kind.ts';
import type { HoleNow, Job, PieceNow, RowItem } from '../../../model/types.ts';
import { printItem, sameItem } from '../../../piece/row.ts';
import { list, namesOf, type Refused, refuse } from '../base/verdict.ts';
import type { InHand } from './hand.ts';
import { noMore } from './none-left.ts';
import { reasonInWords } from './reason.ts';

/** `hole` null: no hole of the piece takes it. */
export function wrongBolt(job: Job, piece: PieceNow, hole: HoleNow | null, hand: InHand): Refused {
  const alone = piece.holes.filter(
    (h) => h.state === 'out' && h.belongs && h.belongs.kind === hand.kind,
  );
  // With what lies under its head it belongs where that does.
  const item = { kind: hand.kind, with: [...(hand.with ?? [])] };
  const just = alone.filter((h) => h.belongs && item.with.length > 0 && sameItem(h.belongs, item));
  const belongs = just.length > 0 ? just : alone;
  const said = [
    hole?.belongs ? `${hole.name} takes ${sayItem(job, hole.belongs)}.` : null,
    `In your hand: ${hand.length ? hand.kind : sayItem(job, { kind: hand.kind, with: hand.with ?? [] })}.`,
    hole ? reasonInWords(job, piece, hole, hand) : null,
    belongsSaid(piece, namesOf(belongs)),
    hole ? noMore(job, piece, [hole], hand) : null,
  ];
  return refuse('wrong-bolt', said.filter((s) => s !== null).join(' '), {
    ...(hole ? { hole: hole.name } : {}),
    takes: hole?.belongs ? printItem(hole.belongs) : null,
    inHand: hand.length
      ? { length: hand.length }
      : printItem({ kind: hand.kind, with: hand.with ?? [] }),
    belongs: namesOf(belongs),
  });
}

function belongsSaid(piece: PieceNow, holes: string[]): string {
  if (holes.length === 0) return `No empty hole of ${piece.spec.name} takes it.`;
  return `It belongs in ${list(holes)}.`;
}

/** `M, 35 mm, clip under the head`. */
function sayItem(job: Job, item: RowItem): string {
  const length = lengthSaid(job.upper.kinds.get(item.kind));
  const under = item.with.length > 0 ? [`${list(item.with)} under the head`] : [];
  return [item.kind, ...(length === null ? [] : [length]), ...under].join(', ');
}
