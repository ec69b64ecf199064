/** Which keys a text can be put into, and which can be corrected: from the table of keys, for the help. */
import { CORRECTABLE_OF, isAnew, isSeveral, WRITABLE } from '../../model/keys/known-keys.ts';

/** Help is read on a screen of eighty columns. */
const WIDTH = 80;

/** Words in lines of this width. */
function filled(text: string): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= WIDTH) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines;
}

export function writtenSaid(): string[] {
  const several = WRITABLE.filter(isSeveral).join(', ');
  const anew = WRITABLE.filter(isAnew).join(', ');
  const one = WRITABLE.filter((key) => !isSeveral(key) && !isAnew(key)).join(', ');
  return [
    ...filled(`KEY takes one text more: ${several};`),
    ...filled(`or has one, where none stands yet: ${one}; or anew: ${anew}.`),
  ];
}

export function correctedSaid(): string[] {
  const each = Object.entries(CORRECTABLE_OF).map(([of, keys]) => `of a ${of}: ${keys.join(', ')}`);
  return filled(`WHAT ${each.join('; ')}.`);
}
