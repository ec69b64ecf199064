import { describe, expect, it } from 'vitest';
import { fold } from '../../src/job/fold/fold.ts';
import { readJob } from '../../src/job/read.ts';
import { bookOf } from '../../src/memory/book.ts';
import { quietOf } from '../../src/memory/last.ts';
import { remember } from '../../src/memory/remember.ts';

const job = (more: string) => {
  const { upper, entries } = readJob(
    `putback: 1
job: Cover weeps
machine: Hollin 400
pieces:
  cover: {bolts: S}
buy:
  gasket: {what: HL-1142 gasket, once: true, for: cover on}
diary:
  - {at: 2026-04-01T10:00:00+02:00, id: mark0001, piece: cover, out: S}
  - {at: 2026-04-01T10:00:01+02:00, id: mark0002, piece: cover, removed: all}
  - {at: 2026-04-01T10:00:02+02:00, id: mark0003, buy: gasket, done: here}
${more}`,
    'job.yaml',
  );
  return fold(upper, entries);
};
const BACK = `  - {at: 2026-04-01T10:01:00+02:00, id: mark0004, piece: cover, in: S}
  - {at: 2026-04-01T10:02:00+02:00, id: mark0005, piece: cover, tight: snug}
  - {at: 2026-04-01T10:03:00+02:00, id: mark0006, piece: cover, tight: full}
`;

describe('a part that is here', () => {
  const parts = (one: ReturnType<typeof job>) =>
    remember(one).flatMap((k) => (k.about === 'part' ? [k.text] : []));
  const inIt = (one: ReturnType<typeof job>) =>
    bookOf('Hollin 400', [{ file: 'a.yaml', job: one }]).parts.map((p) => p.text);

  it('only lies there while its piece is off: it is neither known to fit nor in the machine', () => {
    expect([parts(job('')), inIt(job(''))]).toEqual([[], []]);
  });

  it('was here when its piece went on again, and is fitted only where somebody noted it', () => {
    const said = ['HL-1142 gasket, here, not noted as fitted'];
    expect([parts(job(BACK)), inIt(job(BACK))]).toEqual([said, said]);
    const fitted = `${BACK}  - {at: 2026-04-01T10:04:00+02:00, id: mark0007, buy: gasket, done: fitted}\n`;
    expect(parts(job(fitted))).toEqual(['HL-1142 gasket']);
  });
});

describe('what is told in one quiet line', () => {
  const more = `  - {at: 2026-04-02T10:00:00+02:00, id: mark0007, piece: cover, hole: 1, state: stuck}
  - {at: 2026-04-03T10:00:00+02:00, id: mark0008, task: weep, done: failed, says: weeps at the lower edge}
  - {at: 2026-04-04T10:00:00+02:00, id: mark0009, task: weep, done: passed}
  - {at: 2026-04-05T10:00:00+02:00, id: mark0010, suspect: plug, found: Plugs fouled}
  - {at: 2026-04-05T10:01:00+02:00, id: mark0011, task: mend-plug, done: done, says: new plugs}
`;
  const told = () => {
    const one = job(more);
    const text = `putback: 1
job: Cover weeps
machine: Hollin 400
pieces: {cover: {bolts: S}}
suspects: {plug: Plugs fouled}
tasks: {weep: {test: Oil at the edge, after: cover on}, mend-plug: {do: Put right}}
diary:
`;
    const { upper } = readJob(text, 'job.yaml');
    return fold(upper, one.entries);
  };
  const now = '2027-01-02T10:00:00+02:00';

  it('of the machine: which job, which piece, the year, what the fault was; and what passed in the end is not failed', () => {
    const before = told();
    const said = quietOf(
      job(''),
      [{ file: 'a.yaml', job: before, same: 'name', day: '2026-04-05' }],
      now,
    );
    expect(said).toBe(
      'Last time on this machine, April 2026 (Cover weeps): Cover: 1 stuck, failed at first: Oil at the edge: weeps at the lower edge; it was Plugs fouled: new plugs.',
    );
  });

  it('all of it is behind the key, the fault with what was done about it', () => {
    expect(remember(told()).map(({ about, text }) => `${about}: ${text}`)).toContain(
      'found: Plugs fouled: new plugs',
    );
  });
});
