/** How likely each suspect is against the others: words as weights, and weights as words. */
import { isWeight } from './read.ts';
import type { Share, Suspect, TraceLikely } from './types.ts';

const WORDS: Readonly<Record<TraceLikely, number>> = { often: 4, 'now and then': 2, rarely: 1 };

/** Weight of each suspect, above zero; one that nobody knows weighs the mean of the others. */
export function weightsOf(suspects: readonly Suspect[]): Map<string, number> {
  const said = suspects.map(({ name, likely }) => [name, weightOf(likely)] as const);
  const unknown = meanOf(said.map(([, weight]) => weight)) ?? 1;
  return new Map(said.map(([name, weight]) => [name, weight ?? unknown]));
}

function weightOf(likely: Suspect['likely']): number | null {
  if (likely === null) return null;
  if (typeof likely === 'string') return WORDS[likely];
  return isWeight(likely) ? likely : null;
}

/** Mean of those that are known; null where none is. */
export function meanOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value / known.length, 0);
}

/**
 * The word for a weight: the nearest on the scale of the words, halfway between two being their geometric mean.
 * Where the file has only numbers, the heaviest is `often`.
 */
export function wordsFor(
  suspects: readonly Suspect[],
  weights: ReadonlyMap<string, number>,
): (name: string) => TraceLikely {
  const worded = suspects.some(({ likely }) => typeof likely === 'string');
  const scale = worded ? 1 : WORDS.often / Math.max(...weights.values());
  return (name) => {
    const weight = (weights.get(name) ?? 0) * scale;
    if (weight >= Math.sqrt(WORDS.often * WORDS['now and then'])) return 'often';
    return weight >= Math.sqrt(WORDS['now and then'] * WORDS.rarely) ? 'now and then' : 'rarely';
  };
}

/** Shares of those left, in words. */
export function sharesOf(
  left: readonly string[],
  weights: ReadonlyMap<string, number>,
  word: (name: string) => TraceLikely,
): Map<string, Share> {
  const alike = new Set(left.map((name) => weights.get(name))).size === 1;
  const share = (name: string): Share => {
    if (left.length === 1) return 'left';
    return alike ? 'alike' : word(name);
  };
  return new Map(left.map((name) => [name, share(name)]));
}
