import { describe, expect, it } from 'vitest';
import { typedDate } from '../../src/model/typed-date.ts';

const NOW = '2026-04-11T23:30:00+02:00';

describe('a day typed at the bench', () => {
  it.each([
    ['25 April', '2026-04-25'],
    ['april 25', '2026-04-25'],
    ['25 apr.', '2026-04-25'],
    ['25.4.', '2026-04-25'],
    ['25.4', '2026-04-25'],
    ['25th', '2026-04-25'],
    ['3', '2026-05-03'],
    ['11', '2026-04-11'],
    ['10 April', '2027-04-10'],
    ['31', '2026-05-31'],
    ['29 feb', '2028-02-29'],
    ['5 days', '2026-04-16'],
    ['in 2 weeks', '2026-04-25'],
    ['tomorrow', '2026-04-12'],
    ['2026-12-01', '2026-12-01'],
    ['25.4.2027', '2027-04-25'],
    ['2. 5. 2027', '2027-05-02'],
    ['25 April 2027', '2027-04-25'],
    ['April 25th, 2025', '2025-04-25'],
    // 11 April 2026 is a Saturday.
    ['sunday', '2026-04-12'],
    ['Fri', '2026-04-17'],
    ['saturday', '2026-04-18'],
  ])('%s is %s', (text, date) => {
    expect(typedDate(text, NOW)).toBe(date);
  });

  it.each([
    '',
    'soon',
    '32',
    '31 april',
    '2026-02-30',
    '0',
    '25.13.',
    '30.2.2027',
    '25.4.26',
    '2027',
    'may 2027',
  ])('%s is none', (text) => {
    expect(typedDate(text, NOW)).toBeNull();
  });
});
