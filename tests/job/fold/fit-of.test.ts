import { describe, expect, it } from 'vitest';
import { fitOfPiece } from '../../../src/job/fold/fit-of.ts';
import { fold } from '../../../src/job/fold/fold.ts';
import { readJob } from '../../../src/job/read.ts';
import { swaps } from '../../../src/piece/swaps.ts';

const JOB = `putback: 1
job: x
bolts: {S: M6x25, L: M6x55}
pieces: {cover: {bolts: S S L L, thick: 12, thread: 0..30}}
`;

describe('a kind against a hole', () => {
  it('is judged once, however often and for whatever it is asked', () => {
    const { upper } = readJob(JOB, 'a.yaml');
    const job = fold(upper, []);
    const piece = job.pieces.get('cover');
    if (!piece) throw new Error('no cover');
    // Each judgement looks its kind up once.
    let judged = 0;
    const kinds = new Map(job.upper.kinds);
    const get = kinds.get.bind(kinds);
    kinds.get = (letter) => {
      judged += 1;
      return get(letter);
    };
    const fitOf = fitOfPiece({ ...job, upper: { ...job.upper, kinds } }, piece);
    const table = () =>
      ['S', 'L'].flatMap((kind) => piece.holes.map((hole) => fitOf(kind, hole.name)));
    const first = table();
    const before = judged;
    expect(first).toHaveLength(8);
    expect(table().every((fit, i) => fit === first[i])).toBe(true);
    const holes = piece.holes.map((h) => ({ name: h.name, takes: h.belongs?.kind ?? null }));
    expect(
      swaps({ holes, tray: ['S', 'L'], kinds: job.upper.kinds, fitOf }).length,
    ).toBeGreaterThan(0);
    expect(judged).toBe(before);
  });
});
