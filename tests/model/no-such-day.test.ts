/** Days that no calendar has are named as that. */
import { describe, expect, it } from 'vitest';
import { noSuchDay } from '../../src/model/no-such-day.ts';

describe('a day that there is not', () => {
  it.each([
    ['2026-02-30', 'February 2026 has no 30th.', '2026-02-30'],
    ['2026-02-29', 'February 2026 has no 29th.', '2026-02-29'],
    ['after 30 February', 'February has no 30th.', '30 February'],
    ['31st of no month, 31 april', 'April has no 31st.', '31 april'],
    ['Sept 31', 'September has no 31st.', 'Sept 31'],
    ['31.4.', 'April has no 31st.', '31.4.'],
    ['29 Feb 2027', 'February 2027 has no 29th.', '29 Feb 2027'],
    ['by 32 Jan', 'January has no 32nd.', '32 Jan'],
  ])('%s', (text, say, value) => {
    expect(noSuchDay(text)).toEqual({ value, say });
  });

  it.each([
    ...[
      '2026-02-28',
      '2028-02-29',
      '29 February',
      '31 May',
      'May 31',
      '5 days',
      '31.12.',
      '40 marks',
    ],
    ...[
      'after 50 km',
      'next day',
      '2.5 mm',
      'M6x35',
      '10.30',
      '1999-30-12',
      'a maybe',
      'decide in 40 min',
    ],
  ])('%s names none', (text) => {
    expect(noSuchDay(text)).toBeNull();
  });
});
