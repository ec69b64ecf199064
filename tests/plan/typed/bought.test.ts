import { expect, it } from 'vitest';
import { boughtTyped } from '../../../src/plan/typed/bought.ts';

const NOW = '2026-11-30T10:00:00+01:00';

it.each([
  ['cover gasket, ordered', { what: 'cover gasket', state: 'ordered', promised: null }],
  ['cover gasket, is here', { what: 'cover gasket', state: 'here', promised: null }],
  ['HL-1142, 1 mm, arrived', { what: 'HL-1142, 1 mm', state: 'here', promised: null }],
  [
    'cover gasket, ordered, promised 21 December',
    { what: 'cover gasket', state: 'ordered', promised: '2026-12-21' },
  ],
  [
    'cover gasket, ordered for 21 December',
    { what: 'cover gasket', state: 'ordered', promised: '2026-12-21' },
  ],
])('%s', (text, read) => {
  expect(boughtTyped(text, NOW)).toEqual(read);
});

it.each([
  'cover gasket',
  'ordered gasket',
  'gasket, paper',
  'gasket, ordered by Ann',
  'gasket, here soon',
])('%s is a name as it stands', (text) => {
  expect(boughtTyped(text, NOW)).toBeNull();
});
