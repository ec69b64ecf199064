/** What was disturbed, and what sort of thing it is: what has to be looked at afterwards follows from that. */
import type { Care, Job, PieceNow, PieceSpec } from '../../model/types.ts';
import { caresOf } from '../care/care.ts';
import type { Lines } from '../order/lines.ts';
import { type CareSort, SORTS, type Sort, sortRow } from './sorts.ts';

/** What is dangerous about it is what it is tested for. */
function isSort(care: Care): care is Care & CareSort {
  return SORTS.some((sort) => sort === care && sortRow(sort).words === null);
}

/** Covers behind which no liquid stands. */
const DRY = ['belt', 'fan', 'dust', 'seat', 'fuse', 'battery', 'terminal'];
const isDry = (words: string): boolean =>
  DRY.some((what) => words.includes(what)) &&
  new RegExp(`\\b(?:${DRY.join('|')}) (?:covers?|lids?|housings?)\\b`).test(words);

export function sortsOf(spec: PieceSpec): Sort[] {
  const words = `${spec.key.replaceAll('-', ' ')} ${spec.name}`.toLowerCase();
  const by = new Set<Sort>(SORTS.filter((sort) => sortRow(sort).words?.test(words)));
  if (isDry(words)) by.delete('cover');
  // What has a joint can weep at it, whatever it is called.
  if (spec.joint.length > 0 && !by.has('exhaust')) by.add('cover');
  for (const care of caresOf(spec).care) if (isSort(care)) by.add(care);
  // A fuel line is a hose, but what it shows is a smell; an exhaust pipe holds no liquid.
  if (by.has('exhaust')) by.delete('hose');
  return [...by];
}

/** Pieces that came off or were moved aside at any time, in the order of the file. */
export function disturbedOf(job: Job, lines: Lines): PieceNow[] {
  return [...job.pieces.values()].filter((piece) => lines.off.has(piece.spec.key));
}
