import { describe, expect, it } from 'vitest';
import { keySlug, MOST_OF_KEY, slug } from '../../src/model/slug.ts';

describe('a name for the file from words', () => {
  it.each([
    ['Left cover', 'left-cover'],
    ['Öldeckel groß', 'oldeckel-gross'],
    ['Prüfen: dicht', 'prufen-dicht'],
    ['Øl & Æther, łoś', 'ol-aether-los'],
    ['couvercle d’embrayage', 'couvercle-d-embrayage'],
    ['蓋', ''],
  ])('%s: %s', (words, name) => {
    expect(slug(words)).toBe(name);
  });

  it('is no longer than a key should be', () => {
    expect(keySlug('a b '.repeat(100)).length).toBeLessThanOrEqual(MOST_OF_KEY);
  });
});
