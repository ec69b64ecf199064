import { describe, expect, it } from 'vitest';
import { fold } from '../../src/job/fold/fold.ts';
import { readJob } from '../../src/job/read.ts';
import { bookOf } from '../../src/memory/book.ts';
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
