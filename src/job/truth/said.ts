/**
 * A sentence in its parts: words of ours, and texts of the file with how they are printed where that is not so. A screen
 * strikes what is printed, a command says it in words; neither looks for it in the sentence.
 */

import type { TextSaid } from '../../model/types.ts';

/** A text in a sentence; a part of one of the file's, or one in other words, says of which. */
export interface TextPart extends TextSaid {
  of?: TextSaid;
}

export type Words = readonly (string | TextPart)[];

/** Other words for a text of the file, or a part of it. */
export function inOtherWords(said: TextPart, text: string): TextPart {
  return { text, printed: said.printed, of: said.of ?? said };
}

/** Its own full stop would stand before a bracket or a comma. */
const bare = (text: string) => text.replace(/(?<!\.)\.$/, '');

/** What stands before and behind a printed text that is not so. */
const BESIDE_PRINTED = [' (not ', ', as printed)'] as const;

/** `8 N·m, bulletin 12 (not 10 N·m, manual 2-17, as printed)`. */
export function besidePrinted(text: string, printed: string): string {
  const [open, close] = BESIDE_PRINTED;
  return `${bare(text)}${open}${bare(printed)}${close}`;
}

/** A sentence cut where a screen strikes: what is printed and not so, and what stands around it. */
export function cutAtPrinted(words: Words): { text: string; struck: boolean }[] {
  return words.flatMap((part) => {
    const [text, printed] = typeof part === 'string' ? [part, null] : [part.text, part.printed];
    if (printed === null) return [{ text, struck: false }];
    const [open, close] = BESIDE_PRINTED;
    return [
      { text: `${bare(text)}${open}`, struck: false },
      { text: bare(printed), struck: true },
      { text: close, struck: false },
    ];
  });
}

/** The sentence in words alone. */
export function inWords(words: Words): string {
  return cutAtPrinted(words)
    .map(({ text }) => text)
    .join('');
}

/** `1`, `1 and 2`, `1, 2 and 3`. */
export function listed(parts: Words): Words {
  return parts.flatMap((part, i) => {
    const before = i === 0 ? [] : [i === parts.length - 1 ? ' and ' : ', '];
    return [...before, part];
  });
}

/** The same sentence without how these texts are printed: that is shown beside it. */
export function withoutPrinted(words: Words, texts: ReadonlySet<TextSaid>): Words {
  return words.map((part) => {
    if (typeof part === 'string' || part.printed === null) return part;
    return texts.has(part.of ?? part) ? bare(part.text) : part;
  });
}
