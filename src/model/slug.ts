/** Letters that Unicode does not take apart, as they are written where only a to z can be. */
const LETTERS: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
};

/** A name for a key of the file from words: `Left cover` is `left-cover`; empty where nothing of them makes one. */
export function slug(words: string): string {
  return words
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøłđðþı]/g, (letter) => LETTERS[letter] ?? '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
}

/** Most letters of a key that is made of somebody's words; YAML reads no key of more than 1024. */
export const MOST_OF_KEY = 60;

/** Characters from which a key is made: what stands behind so many makes no better one. */
const LOOKED_AT = 1000;

/** The same, no longer than a key of the file should be; `count`: of no more than so many words. */
export function keySlug(words: string, count?: number): string {
  const all = slug(words.slice(0, LOOKED_AT));
  const some = count === undefined ? all : all.split('-').slice(0, count).join('-');
  return some.slice(0, MOST_OF_KEY).replace(/-+$/, '');
}
