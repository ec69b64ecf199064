/** A row as it is being typed: each word with its hole, and what is wrong with it. */
import { readBoltLength } from '../../bolt/read/length.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { FOUND_EMPTY, rowWords, STILL_IN, signOf, UNKNOWN } from '../../piece/row.ts';
import { letterMeant, lettersOf } from './hand.ts';

export interface TypedWord {
  /** As it will be noted: letters as the job writes them. */
  word: string;
  hole: string;
  /** New in this job, so that it is shown as such. */
  isNew: boolean;
}

/** What stands where there is little room: the kind, and a `+` where something lies under its head. */
export function shortWord({ word }: TypedWord): string {
  return word.replace(/\+.*/, '+');
}

const SIGNS: readonly string[] = [STILL_IN, FOUND_EMPTY, UNKNOWN];

/** The words of the text; `sss!` typed in one go are four where each letter is a kind. */
export function readTyped(text: string, job: Job, piece: PieceNow): TypedWord[] {
  const letters = lettersOf(job);
  const words = rowWords(text).flatMap(({ word }) => wordsTyped(signOf(word), letters));
  return words.map((typed, i) => {
    const [head = '', ...unders] = typed.split('+');
    const letter = letterMeant(head, letters);
    const isLength = head.startsWith('.') && readBoltLength(head.slice(1)) !== null;
    const isNew = letter === null && !SIGNS.includes(head) && !isLength;
    const shown = letter ?? (/^[a-z]$/.test(head) ? head.toUpperCase() : head);
    return {
      word: [shown, ...unders].join('+'),
      hole: piece.holes[i]?.name ?? `${i + 1}`,
      isNew,
    };
  });
}

/** `ssm+clip` typed in one go is three words: what is under a head goes with the last letter. */
function wordsTyped(word: string, letters: readonly string[]): string[] {
  const head = /^[^+]*/.exec(word)?.[0] ?? '';
  if (head.length < 2 || head.startsWith('.') || letterMeant(head, letters) !== null) return [word];
  const each = [...head];
  const all = each.every((c) => SIGNS.includes(c) || letterMeant(c, letters) !== null);
  if (!all) return [word];
  const last = each.length - 1;
  return each.map((c, i) => (i === last ? c + word.slice(head.length) : c));
}
