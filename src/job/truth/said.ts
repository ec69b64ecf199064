/**
 * A sentence in its parts: words of ours, and texts of the file with how they are printed where that is not so. A screen
 * strikes what is printed, a command says it in words; neither looks for it in the sentence.
 */

/** What is true, and what is printed where that is something else. */
export interface TextSaid {
  text: string;
  printed: string | null;
  /** Where it stands in the file (`placeOfText`); left out for words that are not the file's. */
  place?: string;
}

export type Words = readonly (string | TextSaid)[];

/** Its own full stop would stand before a bracket or a comma. */
const bare = (text: string) => text.replace(/(?<!\.)\.$/, '');

/** What stands before and behind a printed text that is not so. */
export const BESIDE_PRINTED = [' (not ', ', as printed)'] as const;

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

/** The same sentence without what is printed at these places: it is shown beside it. */
export function withoutPrinted(words: Words, places: ReadonlySet<string>): Words {
  return words.map((part) => {
    if (typeof part === 'string' || part.printed === null) return part;
    return places.has(part.place ?? '') ? bare(part.text) : part;
  });
}
