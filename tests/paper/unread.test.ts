import { describe, expect, it } from 'vitest';
import { jobOf, readJob } from '../../src/job/read.ts';
import { sheetText } from '../../src/paper/sheet.ts';
import { allPapers, htmlOf } from './all-papers.ts';
import { NOW } from './jobs.ts';

const TEXT = `putback: 1
job: Pump cover drips
machine: Velde GS 90
bolts: {M: "M8x45 flange, 12 mm, 10.9"}
pieces:
  cover: {bolts: M M, torque: "22 N·m"}
diary:
  - {at: 2026-04-11T16:00:00+02:00, id: aaaaaaa1, piece: cover, out: M}
  - {at: 2026-10-31 09:07, id: aaaaaaa2, piece: cover, inside: 3 rags}
`;
const SAYS = 'Not all of the job could be read: line 9 (bad-time) does not count.';

describe('a job with a line that was not read', () => {
  it.each(['card', 'tag', 'sheet', 'report', 'steps'] as const)('%s: says so', (what) => {
    const made = (text: string) => allPapers(jobOf(readJob(text, 'job.yaml')), 'cover', 'a4')[what];
    expect(htmlOf(made(TEXT))).toContain(SAYS);
    expect(
      htmlOf(made(TEXT.replace('2026-10-31 09:07', '2026-10-31T09:07:00+01:00'))),
    ).not.toContain('could be read');
  });

  it('the sheet in words says so too', () => {
    const job = jobOf(readJob(TEXT, 'job.yaml'));
    const ask = { job, now: NOW, size: 'a4', piece: null, wrenches: [], question: null } as const;
    expect(sheetText({ ...ask, show: new Set() })).toContain('## Not read\n\n- Not all of the job');
  });
});

describe('the way up of one piece with many bolts', () => {
  it('goes over both columns of its page', () => {
    const row = Array.from({ length: 200 }, (_, i) => (i % 3 ? 'S' : 'M')).join(' ');
    const text = `putback: 1\njob: Deck\npieces:\n  deck: {bolts: ${row}}\n  lid: {bolts: S S}\ndiary:\n`;
    const html = htmlOf(allPapers(jobOf(readJob(text, 'job.yaml')), 'deck', 'letter').steps);
    expect(html.match(/<li class="long">/g)).toHaveLength(1);
    expect(html).toContain('font-size:16pt');
  });
});
