/** A bolt whose head was rounded came out in the end: whether it goes in once more is asked, and let through. */
import type { HoleNow, Job, PieceNow, Warning } from '../../../model/types.ts';
import { list } from '../base/verdict.ts';

/** `2 came out with its head rounded: is this the new one?` */
export function wasRounded(job: Job, piece: PieceNow, open: readonly HoleNow[]): Warning[] {
  const rounded = new Set(
    job.entries.flatMap((e) =>
      e.piece === piece.spec.key &&
      e.verb === 'state' &&
      e.value === 'rounded' &&
      job.living.has(e.id) &&
      job.rounds.get(e.id) === piece.round
        ? (e.hole ?? [])
        : [],
    ),
  );
  const names = open.map((h) => h.name).filter((name) => rounded.has(name));
  if (names.length === 0) return [];
  const [its, is] =
    names.length === 1
      ? ['its head', 'is this the new one']
      : ['their heads', 'are these the new ones'];
  const say = `${list(names)} came out with ${its} rounded: ${is}?`;
  return [{ code: 'was-rounded', say }];
}
