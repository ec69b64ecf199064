/** Names of pieces as somebody types them: by name or key, or as much of one as leaves no doubt. */
import { near } from '../../model/nearword.ts';
import { slug } from '../../model/slug.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { list } from '../../model/words.ts';

/** Keys of the pieces named, each once, or why not. */
export function typedNames(
  text: string,
  job: Job,
  self: string,
): { keys: string[] } | { fault: string } {
  const others = [...job.pieces.values()].filter((p) => p.spec.key !== self);
  const whole = find(text, others);
  const words = whole ? [text] : text.split(/[,;&]|\band\b/i).filter((w) => w.trim() !== '');
  const keys = new Set<string>();
  for (const word of words) {
    const found = find(word, others);
    if (!found) return { fault: unknown(word.trim(), job, self, others) };
    keys.add(found.spec.key);
  }
  return keys.size === 0 ? { fault: 'Nothing is typed yet.' } : { keys: [...keys] };
}

function find(text: string, pieces: readonly PieceNow[]): PieceNow | null {
  const typed = slug(text);
  if (typed === '') return null;
  const names = (p: PieceNow) => [p.spec.key, slug(p.spec.name)];
  const same = pieces.find((p) => names(p).includes(typed));
  if (same) return same;
  const begun = pieces.filter((p) => names(p).some((n) => n.startsWith(typed)));
  return begun.length === 1 ? (begun[0] ?? null) : null;
}

function unknown(word: string, job: Job, self: string, others: readonly PieceNow[]): string {
  const own = job.pieces.get(self);
  if (own && find(word, [own])) return 'That is the piece itself.';
  const typed = slug(word);
  const several = others.filter((p) => slug(p.spec.name).startsWith(typed)).map((p) => p.spec.name);
  if (typed !== '' && several.length > 1) return `Which one: ${list(several)}?`;
  const key = near(
    typed,
    others.flatMap((p) => [p.spec.key, slug(p.spec.name)]),
  );
  const meant = key === null ? null : find(key, others);
  return `No piece ${word} in this job.${meant ? ` Did you mean ${meant.spec.name}?` : ''}`;
}

/** All that can be named, for whoever does not know how they are called. */
export function namesOffered(job: Job, self: string): string {
  const names = [...job.pieces.values()].filter((p) => p.spec.key !== self).map((p) => p.spec.name);
  return names.length === 0 ? 'No other piece is noted yet.' : `${list(names)}.`;
}
