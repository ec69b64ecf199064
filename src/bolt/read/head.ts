/** Heads by their shape, so that two wordings of one head are not taken for two. */

import { remembering } from '../../model/remembering.ts';

export type HeadShape =
  | 'hex'
  | 'flange'
  | 'socket'
  | 'button'
  | 'countersunk'
  | 'pan'
  | 'stud'
  | 'grub'
  | 'bleed';

/** Words of the trade for each shape; a `hex flange` is a flange head, an `Allen` button head a button head. */
const SHAPES: [HeadShape, RegExp][] = [
  ['bleed', /\b(?:bleed(?:er)?|banjo)\b/i],
  ['stud', /\bstuds?\b/i],
  ['grub', /\b(?:grub|set ?screw)\b/i],
  ['countersunk', /\b(?:countersunk|csk|flat ?head)\b/i],
  ['button', /\b(?:button|dome|mushroom)\b/i],
  ['pan', /\b(?:pan|cheese|round ?head)\b/i],
  ['flange', /\bflanged?\b/i],
  ['socket', /\b(?:socket|allen|cap ?(?:head|screw)|shcs)\b/i],
  ['hex', /\bhex(?:agon(?:al)?)?\b/i],
];

const shape = remembering((head) => SHAPES.find(([, pattern]) => pattern.test(head))?.[0] ?? null);

/** The shape that the words of a head name; null when they name none that is known. */
export function headShape(head: string | null): HeadShape | null {
  return head === null ? null : shape(head);
}
