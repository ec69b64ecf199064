import { describe, expect, it } from 'vitest';
import { checkJob } from '../../../src/job/check.ts';
import { livingEntries } from '../../../src/job/diary/living.ts';
import { readJob } from '../../../src/job/read.ts';
import { silentTruths } from '../../../src/job/truth/corrections.ts';
import { Bench } from '../bench.ts';

const JOB = `putback: 1
job: Left cover weeps oil
pieces:
  cover: {bolts: S S, torque: "10 N·m, manual 2-17", sequence: 1 2}
diary:
`;

function corrected(what: 'torque' | 'sequence', truth: string): Bench {
  const bench = new Bench(JOB);
  bench.mark({ do: 'correct', piece: 'cover', what, truth });
  return bench;
}

const lost = (bench: Bench) =>
  silentTruths(readJob(bench.text, 'job.yaml').upper, livingEntries(bench.entries)).lost.map(
    (e) => e.says,
  );
const torque = (bench: Bench) => bench.job.upper.pieces.get('cover')?.torque?.text;

describe('a truth of a text that somebody changed in the file', () => {
  it('counts as before where only the spelling is another', () => {
    const bench = corrected('torque', '8 N·m, bulletin 12');
    bench.text = bench.text.replace('10 N·m, manual', '10 Nm, manual');
    expect([torque(bench), lost(bench)]).toEqual(['8 N·m, bulletin 12', []]);
  });

  it('is told as lost where another figure, or another page, stands there now', () => {
    for (const now of ['12 N·m, manual 2-17', '10 N·m, manual 2-18']) {
      const bench = corrected('torque', '8 N·m');
      bench.text = bench.text.replace('10 N·m, manual 2-17', now);
      expect([torque(bench), lost(bench)]).toEqual([now, ['8 N·m']]);
    }
  });

  it('is not lost where it was corrected again, or back', () => {
    const bench = corrected('torque', '8 N·m');
    bench.mark({ do: 'correct', piece: 'cover', what: 'torque', truth: '9 N·m' });
    expect(lost(bench)).toEqual([]);
    bench.mark({ do: 'correct', piece: 'cover', what: 'torque', truth: '10 N·m, manual 2-17' });
    expect(lost(bench)).toEqual([]);
    expect(checkJob(bench.text, 'job.yaml')).toEqual([]);
  });
});

describe('an order that is written after it was corrected', () => {
  it('is the one that counts', () => {
    const bench = corrected('sequence', '2 1');
    for (const text of ['2 1', '1 2']) {
      bench.mark({ do: 'write', piece: 'cover', key: 'sequence', text });
      expect(bench.job.upper.pieces.get('cover')?.sequence?.join(' ')).toBe(text);
    }
    expect([bench.job.corrections, lost(bench)]).toEqual([[], []]);
  });
});
