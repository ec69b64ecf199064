/** A name for a key of the file from words: `Left cover` is `left-cover`; empty where nothing of them makes one. */
export function slug(words: string): string {
  return words
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
}
