import { expect, it } from 'vitest';
import { readJob } from '../../../src/job/read.ts';

const file = (value: string) => `putback: 1
job: Cover weeps
bolts: {S: M6x25}
pieces:
  cover: {bolts: "? S ?"}
diary:
  - {at: 2026-04-11T18:25:40+02:00, id: aaaaaaaa, piece: cover, out: "? S ?"}
  - {at: 2026-04-11T18:26:40+02:00, id: bbbbbbbb, piece: cover, hole: 1, in: "${value}"}
`;

it.each(['20 mm', '22.5 mm', '?', 'S+washer'])(
  'a bolt that went in as %s is read without a word',
  (value) => {
    expect(readJob(file(value), 'cover.yaml').faults).toEqual([]);
  },
);

it('what is no bolt is told', () => {
  expect(readJob(file('20 mm long'), 'cover.yaml').faults).toMatchObject([{ code: 'entry-row' }]);
});
