import { describe, expect, it } from 'vitest';
import { jobOf, readJob } from '../../../src/job/read.ts';
import { MOMENTS } from '../../../src/model/types.ts';
import { tagSays } from '../../../src/paper/tag.ts';
import { gate, isPassed } from '../../../src/plan/gates/gate.ts';
import { NOW } from '../make.ts';

const textOf = (at: string) => `putback: 1
job: Left cover
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S}
diary:
  - {at: ${at}, piece: cover, inside: 3 rags, id: aaaaaaa1}
  - {at: 2026-05-02T09:08:00+02:00, piece: cover, cleared: 3 rags, id: aaaaaaa2}
  - {at: 2026-05-02T09:09:00+02:00, seen: start all, id: aaaaaaa3}
  - {at: 2026-05-02T09:09:01+02:00, piece: cover, seen: closing all, id: aaaaaaa4}
`;
const jobAt = (at: string) => jobOf(readJob(textOf(at), 'e.yaml'));

describe('a line that could not be read', () => {
  it.each(MOMENTS)('stops at %s, whatever was ticked or struck', (moment) => {
    const broken = gate(jobAt('2026-10-31 09:07'), moment, 'cover', NOW);
    expect(isPassed(broken)).toBe(false);
    expect(broken.items[0]).toEqual({
      key: 'unread',
      say: 'Lines that could not be read: 7.',
      done: false,
      stops: true,
      loud: false,
      stop: 'Not all of the job could be read: line 7 (bad-time) does not count. putback check on the file says why, and the way out.',
      way: { to: 'file' },
    });
    const whole = gate(jobAt('2026-05-02T09:07:00+02:00'), moment, 'cover', NOW);
    expect(whole.items.map((i) => i.key)).not.toContain('unread');
  });

  it('is none where only the name of the job or the version of the form is missing', () => {
    const whole = textOf('2026-05-02T09:07:00+02:00');
    for (const gone of ['putback: 1\n', 'job: Left cover\n', 'putback: 1\njob: Left cover\n']) {
      const read = readJob(whole.replace(gone, ''), 'e.yaml');
      expect(read.faults.map((f) => f.severity)).toContain('error');
      for (const moment of MOMENTS) {
        const { items } = gate(jobOf(read), moment, 'cover', NOW);
        expect(items.map((i) => i.key)).not.toContain('unread');
      }
    }
  });

  it('lets start and closing pass once it is mended', () => {
    const whole = jobAt('2026-05-02T09:07:00+02:00');
    expect(isPassed(gate(whole, 'start', null, NOW))).toBe(true);
    expect(isPassed(gate(whole, 'closing', 'cover', NOW))).toBe(true);
  });

  it('hangs the tag on the machine', () => {
    expect(tagSays(jobAt('2026-05-02T09:07:00+02:00'), NOW)).toBeNull();
    expect(tagSays(jobAt('2026-10-31 09:07'), NOW)?.stops).toEqual([
      expect.stringContaining('Not all of the job could be read: line 7'),
    ]);
  });

  it('is counted where there are many of them', () => {
    const lines = Array.from({ length: 9 }, (_, i) => ({ line: i + 3, code: 'bad-time' }));
    const [item] = gate({ ...jobAt('2026-10-31 09:07'), unread: lines }, 'start', null, NOW).items;
    expect(item?.stop).toContain('line 8 (bad-time) and 3 more do not count.');
    expect(item?.say).toBe('Lines that could not be read: 3, 4, 5, 6, 7, 8, 9, 10 and 11.');
  });
});
