/** Which bolt may go in one hole: `fit FILE PIECE HOLE --lengths`. */
import { sayLengths } from '../../bolt/length/lengths-said.ts';
import { isInch } from '../../bolt/read/sizes.ts';
import { lengthsOf } from '../../job/fold/lengths-of.ts';
import type { Correctable, HoleNow, Job, PieceNow } from '../../model/types.ts';
import { printItem } from '../../piece/row.ts';
import { type Answer, answer, misuse } from '../base/command.ts';
import { correctedIn, correctedLines } from '../base/corrected.ts';

/** What the lengths hang on. */
const MEASURED: readonly Correctable[] = [
  'thick',
  'thread',
  'turns',
  'proud',
  'into',
  'joint',
  'torque',
];

export function fitLengths(job: Job, piece: PieceNow, hole: HoleNow): Answer {
  const { kinds } = job.upper;
  const kind = kinds.get(hole.belongs?.kind ?? '');
  const lengths = lengthsOf(piece, hole, kinds);
  if (!kind || !hole.belongs) {
    return misuse(
      'no-figures',
      `Nobody has said what belongs in ${hole.name} of ${piece.spec.name}.`,
    );
  }
  if (!lengths) {
    const why = kind.thread ? `${kind.thread} has no figures here` : 'no thread was read of it';
    return misuse('no-figures', `${hole.name} takes ${kind.text}: ${why}.`);
  }
  const corrections = correctedIn(job, piece.spec.key, MEASURED).filter(
    (c) => c.hole === undefined || c.hole === hole.name,
  );
  const under = hole.belongs.with.map((word) => `, ${word} under the head`).join('');
  const text = [
    `${piece.spec.name}, ${hole.name} takes ${kind.text}${under}.`,
    ...sayLengths(lengths, isInch(kind.thread)),
    ...correctedLines(job, corrections),
  ].join('\n');
  const json = {
    piece: piece.spec.key,
    hole: hole.name,
    takes: printItem(hole.belongs),
    ...lengths,
    corrections,
  };
  return answer(json, text);
}
