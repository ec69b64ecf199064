/** What keeps a machine from being run as it stands, and the tests for which it runs with it. */
import type { Job, PieceNow } from '../../model/types.ts';
import { listPieces } from '../../model/words.ts';
import { caresOf } from '../care/care.ts';
import { fluidsOf } from '../care/fluids.ts';
import { insideOf, sayThing } from '../order/inside.ts';
import { looseOf } from '../order/loose.ts';
import { isUndone } from '../order/needed.ts';
import type { Standing } from '../order/standing.ts';

/** `the oil is out`, `1 rag is inside (Case cover)`, `Lever is only finger-tight`: the worst first, empty where nothing does. */
export function notRun(standing: Standing): string[] {
  const { job, lines } = standing;
  const pieces = [...job.pieces.values()];
  const out = fluidsOf(standing).filter((fluid) => fluid.out);
  const loose = pieces.filter((p) => p.holes.some((h) => h.state === 'in'));
  const begun = loose.filter((p) => looseOf(job, p).every(({ lacks }) => lacks !== null));
  const pulled = pieces.filter((p) => p.holes.some((h) => h.trouble === 'pulled'));
  const undone = pieces.filter((p) => isUndone(p) && !loose.includes(p) && mustBeOn(p));
  return [
    ...out.map((fluid) => `${fluid.what} is out`),
    ...insideOf(lines).map(
      (thing) =>
        `${sayThing(thing)} ${thing.count === 1 ? 'is' : 'are'} inside${at(job, thing.piece)}`,
    ),
    ...isOrAre(
      loose.filter((p) => !begun.includes(p)),
      'only finger-tight',
    ),
    ...isOrAre(begun, 'not tight yet'),
    ...(pulled.length > 0 ? [`a thread is pulled in ${listPieces(pulled)}`] : []),
    ...isOrAre(undone, 'not back on'),
  ];
}

/** Without it an engine runs away, or fuel runs out beside it. Common practice, no source. */
function mustBeOn({ spec }: PieceNow): boolean {
  return /\bthrottle\b/i.test(spec.name) || caresOf(spec).care.includes('fuel');
}

function isOrAre(pieces: readonly PieceNow[], how: string): string[] {
  if (pieces.length === 0) return [];
  return [`${listPieces(pieces)} ${pieces.length === 1 ? 'is' : 'are'} ${how}`];
}

function at(job: Job, piece: string | null): string {
  return piece === null ? '' : ` (${job.pieces.get(piece)?.spec.name ?? piece})`;
}
