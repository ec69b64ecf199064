/** How much room a text takes, without the font that will be there: rather too much than too little. */

const NARROW = /[ilj.,:;'|!()[\] ]/;
const WIDE = /[A-Z@%&mwMW—…→]/;
/** Latin, Greek, Cyrillic with their signs; all else may be as wide as it is high. */
const ALPHABETIC = /[\u0020-\u058f\u2010-\u203a]/;

/** Width in units of the size of the font. */
export function textWidth(text: string, bold = false): number {
  let sum = 0;
  for (const c of text) {
    sum += NARROW.test(c) ? 0.42 : WIDE.test(c) ? 0.98 : ALPHABETIC.test(c) ? 0.68 : 1.15;
  }
  return bold ? sum * 1.08 : sum;
}

/** The text in lines that are no wider than so many units of the size of the font; a longer word is cut in two. */
export function wrapped(text: string, most: number): string[] {
  const lines: string[] = [];
  let line = '';
  const push = (word: string) => {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer) <= most) line = longer;
    else if (line !== '') {
      lines.push(line);
      line = '';
      push(word);
    } else {
      const end = longest(word, most);
      lines.push(word.slice(0, end));
      if (end < word.length) push(word.slice(end));
    }
  };
  for (const word of text.split(/\s+/)) if (word !== '') push(word);
  return line === '' ? lines : [...lines, line];
}

/** How many UTF-16 units of a word fit; at least its first character. */
function longest(word: string, most: number): number {
  let end = 0;
  let sum = 0;
  for (const c of word) {
    sum += textWidth(c);
    if (end > 0 && sum > most) break;
    end += c.length;
  }
  return end;
}
