/** What an entry took over from an earlier job. */
import type { Entry } from '../../model/types.ts';
import { list } from '../../model/words.ts';

/** `torque=3fa9c2`, `/bolts/H=…`: a key of the piece or of the file, and the sum of what was put there. */
export const TAKEN_WORD = /^(\/?)([^=]+)=([0-9a-f]{6})$/;

/** What had to be made first. */
const MADE = /^\/(?:bolts|pieces\/[^/=]+)=/;

/** What was taken over, in words: `bolts, torque and hole 4`; where the file had all of it, what came along. */
export function sayTaken({ was = '' }: Entry): string {
  const names = was
    .split(' ')
    .filter((word) => !MADE.test(word))
    .flatMap((word) => TAKEN_WORD.exec(word)?.[2]?.replaceAll('/', ' ') ?? []);
  return names.length === 0 ? 'what is not as printed' : list([...new Set(names)]);
}
