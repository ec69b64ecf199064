/** A mark that is not in the diary, in words. */
import { sayEntry } from '../job/fold/say-entry.ts';
import { judge } from '../job/judge/judge.ts';
import type { Job, Wish } from '../model/types.ts';

/** `Alternator cover: 4 in by fingers: M+clip`, as it would stand in the diary; null: it is so already. */
export function sayWish(job: Job, wish: Wish, now: string): string | null {
  const verdict = judge(job, wish, { at: now, id: 'not-made' });
  if (!verdict.ok) return verdict.refused.say;
  const { entry } = verdict;
  if (entry === null) return null;
  const piece = entry.piece === undefined ? undefined : job.pieces.get(entry.piece);
  return `${piece ? `${piece.spec.name}: ` : ''}${sayEntry(entry, job)}`;
}
