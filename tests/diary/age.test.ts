import { describe, expect, it } from 'vitest';
import { agedTo } from '../../src/diary/age.ts';

const DIARY = `found: at: 2026-04-11 nothing is a time here
diary:
  - {at: 2026-03-02T18:10:00+02:00, id: aaaaaaa1, note: "at home"}
  - {at: 2026-04-11T16:52:08+02:00, id: aaaaaaa2, buy: gasket, done: ordered, promised: "2026-04-25"}
`;

describe('a practice diary', () => {
  it('was left alone for three weeks, whenever it begins; times of day and distances stay', () => {
    expect(agedTo(DIARY, '2026-11-25T08:00:00+00:00', 21)).toBe(
      DIARY.replace('2026-03-02T18:10:00', '2026-09-24T18:10:00')
        .replace('2026-04-11T16:52:08', '2026-11-03T16:52:08')
        .replace('2026-04-25', '2026-11-17'),
    );
  });

  it('without a time stays as it is', () => {
    expect(agedTo('job: X\ndiary:\n', '2026-11-25T08:00:00+00:00', 21)).toBe('job: X\ndiary:\n');
  });
});
