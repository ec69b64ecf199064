/** The sealant's open time: from the moment at which the joint was seen to be ready. */
import type { Job, PieceNow } from '../../job/types.ts';
import { readJoint } from '../../plan/joint.ts';
import { printInstant, readInstant } from '../../plan/time.ts';
import { sayTime } from './say-wait.ts';

/** `Sealant: closed by 18:50`, or that its time is over; null where none runs. */
export function sealantSaid(job: Job, piece: PieceNow, now: string): string | null {
  const { open } = readJoint(piece.spec.joint);
  if (open === null || piece.where === 'tight' || piece.where === 'tested') return null;
  const seen = job.entries.findLast(
    (e) => e.verb === 'seen' && e.piece === piece.spec.key && job.living.has(e.id),
  );
  const from = seen?.value.startsWith('sealing ') ? readInstant(seen.at) : null;
  const at = readInstant(now);
  if (!from || !at) return null;
  const end = from.seconds + open;
  const until = sayTime(printInstant({ seconds: end, offset: from.offset }), now);
  if (at.seconds <= end) return `sealant: closed by ${until}`;
  return at.seconds - end <= OVER ? `sealant: its time was over at ${until}` : null;
}

/** Seconds for which one is told that it is too late; after that it is another day. */
const OVER = 6 * 3600;
