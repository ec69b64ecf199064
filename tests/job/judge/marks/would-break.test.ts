import { describe, expect, it } from 'vitest';
import { checkJob } from '../../../../src/job/check.ts';
import { heldTorque } from '../../../../src/job/fold/against.ts';
import type { Wish } from '../../../../src/model/types.ts';
import { Bench } from '../../bench.ts';

const job = (cover: string, bolts = 'S: M6x25 flange, 8 mm') => `putback: 1
job: Cover weeps
bolts:
  ${bolts}
  L: M10x40 8.8 flange, 14 mm
pieces:
  cover:
    into: cast aluminium
    ${cover}
diary:
`;
/** All in by fingers, and snug. */
function ready(text: string): Bench {
  const bench = new Bench(text);
  bench.mark({ do: 'out', piece: 'cover' });
  const { holes } = bench.piece();
  for (const { name, belongs } of holes) {
    bench.mark({ do: 'in', piece: 'cover', holes: [name], hand: { kind: belongs?.kind ?? '' } });
  }
  bench.mark({ do: 'tight', piece: 'cover', pass: 'snug' });
  return bench;
}
const HARD = job('bolts: S S S\n    torque: 90 lbf·ft');
type Tight = Extract<Wish, { do: 'tight' }>;
const full = (hole: string, because?: string): Tight => ({
  do: 'tight',
  piece: 'cover',
  holes: [hole],
  pass: 'full',
  ...(because ? { because } : {}),
});

describe('a torque that would break the bolt or strip the thread', () => {
  it('is stopped before the first bolt is turned to it, and a reason goes into the diary', () => {
    const bench = ready(HARD);
    expect(bench.refusal(full('1'))).toMatchObject({
      code: 'would-break',
      hole: '1',
      verdict: 'yields',
    });
    const entry = bench.mark(full('1', 'it is 12 mm in truth'));
    expect(entry).toMatchObject({
      verb: 'tight',
      because: 'it is 12 mm in truth',
    });
  });

  it('is asked once for a pass of a piece, and told again at each bolt', () => {
    const bench = ready(HARD);
    bench.mark(full('1', 'it is 12 mm in truth'));
    expect(bench.warnings(full('2'))).toContain('would-break');
    bench.mark(full('2'));
    bench.mark({ do: 'undo', id: bench.entries.at(-2)?.id ?? '' });
    expect(bench.refusal(full('3'))).toMatchObject({ code: 'would-break' });
  });

  it('is asked for each figure that would', () => {
    const bench = ready(
      job('bolts: S S S\n    torque: 90 lbf·ft\n    holes: {3: {torque: 80 N·m}}'),
    );
    bench.mark(full('1', 'it is 12 mm in truth'));
    expect(bench.ask(full('2')).ok).toBe(true);
    expect(bench.refusal(full('3'))).toMatchObject({ code: 'would-break', hole: '3' });
  });

  it('is asked again in the next round', () => {
    const bench = ready(HARD);
    for (const hole of ['1', '2', '3']) bench.mark(full(hole, 'so it is printed'));
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    bench.mark({ do: 'tight', piece: 'cover', pass: 'snug' });
    expect(bench.refusal(full('1'))).toMatchObject({ code: 'would-break' });
  });

  it('counts by what was set, where that is said', () => {
    const bench = ready(HARD);
    expect(bench.ask({ ...full('1'), set: '9 N·m' })).toMatchObject({
      ok: true,
      warnings: [{ code: 'other-figure' }],
    });
    const mild = ready(job('bolts: S S\n    torque: 9 N·m'));
    expect(mild.refusal({ ...full('1'), set: '90 lbf·ft' })).toMatchObject({ code: 'would-break' });
  });

  it('is not the snug pass, nor an angle', () => {
    expect(
      ready(HARD)
        .piece()
        .holes.every((h) => h.passes.includes('snug')),
    ).toBe(true);
    const bench = ready(job('bolts: L L\n    torque: 30 N·m + 90°'));
    bench.mark({ do: 'tight', piece: 'cover', pass: 'full' });
    expect(bench.ask({ do: 'tight', piece: 'cover', pass: 'angle' }).ok).toBe(true);
  });

  it('holds each stage, and what is not read whole with its hardest figure', () => {
    const stages = ready(job('bolts: S S\n    torque: 40 N·m, back off 90°, then 9 N·m'));
    const stage: Tight = { do: 'tight', piece: 'cover', holes: ['1'] };
    expect(stages.refusal(stage)).toMatchObject({ code: 'would-break' });
    const printed = ready(job('bolts: S S\n    torque: 40 N·m after two wobbles'));
    expect(printed.refusal({ ...stage, pass: 'printed' })).toMatchObject({ code: 'would-break' });
  });

  it('is held only against the holes that use it', () => {
    const text = job('bolts: S L L\n    torque: 45 N·m\n    holes: {1: {torque: 9 N·m}}');
    const odd = () => checkJob(text, 'job.yaml').filter((f) => f.code === 'odd-torque');
    expect(odd()).toEqual([]);
    const bench = ready(text);
    expect(bench.ask(full('2')).ok).toBe(true);
    expect(bench.ask(full('1')).ok).toBe(true);
    const bare = text.replace('\n    holes: {1: {torque: 9 N·m}}', '');
    expect(checkJob(bare, 'job.yaml').map((f) => f.code)).toContain('odd-torque');
  });

  it('knows what is on the thread, the insert and the bite', () => {
    const at = (cover: string, bolts?: string) => {
      const bench = new Bench(job(cover, bolts));
      const [hole] = bench.piece().holes;
      return hole ? heldTorque(bench.piece(), hole, bench.job.upper.kinds)?.against : null;
    };
    const turns = '\n    holes: {1: {turns: 8}}';
    const dry = at(`bolts: S\n    torque: 9 N·m, dry${turns}`);
    const oiled = at(`bolts: S\n    torque: 9 N·m, oiled threads${turns}`);
    expect(dry?.holdsTo).toBeGreaterThan(oiled?.holdsTo ?? 0);
    const insert = at(
      `bolts: S\n    torque: 9 N·m, dry\n    holes: {1: {turns: 8, into: wire insert in cast aluminium}}`,
    );
    expect(insert?.holdsTo).toBeGreaterThan(dry?.holdsTo ?? 0);
    expect(at('bolts: S\n    torque: 9 N·m')).toMatchObject({
      verdict: 'cannot say',
      lacks: ['bite'],
    });
    expect(at('bolts: S')).toBeUndefined();
    expect(at(`bolts: S\n    torque: 30 N·m${turns}`, 'S: M22x1.5 drain plug')).toMatchObject({
      verdict: 'cannot say',
      lacks: [],
    });
  });
});
