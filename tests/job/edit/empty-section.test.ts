/** Taken out again by its meaning: what stood in the file before it stays, though nothing is in it any more. */
import { expect, it } from 'vitest';
import { applyEdits } from '../../../src/job/edit/splice.ts';
import type { Edit } from '../../../src/model/types.ts';

const OUT: Edit = { edit: 'unnamed', section: 'buy', key: '6204-bearing' };
const file = (section: string) => `putback: 1\njob: Knocks\n${section}\npieces: {}\ndiary:\n`;

it.each([
  ['buy: {6204-bearing: {what: 6204 bearing}}', 'buy: {}'],
  [
    'buy: {6204-bearing: {what: 6204 bearing}}   # the shop in town',
    'buy: {}   # the shop in town',
  ],
])('%s', (section, left) => {
  expect(applyEdits(file(section), [OUT])).toBe(file(left));
});

it('a section that was written for it goes with it', () => {
  const text = file('buy:\n  6204-bearing: {what: 6204 bearing}');
  expect(applyEdits(text, [OUT])).toBe('putback: 1\njob: Knocks\npieces: {}\ndiary:\n');
});
