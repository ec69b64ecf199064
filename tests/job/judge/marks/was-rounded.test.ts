/** A bolt whose head was rounded does not go in again in silence. */
import { expect, it } from 'vitest';
import type { Wish } from '../../../../src/model/types.ts';
import { Bench } from '../../bench.ts';

const put = (hole: string): Wish => ({
  do: 'in',
  piece: 'cover',
  holes: [hole],
  hand: { kind: 'S' },
});

function outAfterAll(): Bench {
  const bench = new Bench();
  bench.mark({ do: 'state', piece: 'cover', hole: '1', state: 'rounded' });
  bench.mark({ do: 'out', piece: 'lever' });
  bench.mark({ do: 'off', piece: 'lever' });
  bench.mark({ do: 'out', piece: 'cover' });
  bench.mark({ do: 'off', piece: 'cover' });
  return bench;
}

it('is asked about where it goes in, and nowhere else', () => {
  const bench = outAfterAll();
  const verdict = bench.ask(put('1'));
  expect(verdict.ok && verdict.warnings.map((w) => w.say)).toContain(
    '1 came out with its head rounded: is this the new one?',
  );
  expect(bench.warnings(put('2'))).not.toContain('was-rounded');
});

it('is not asked about once that was taken back', () => {
  const bench = outAfterAll();
  const [first] = bench.entries;
  bench.mark({ do: 'undo', id: first?.id ?? '' });
  expect(bench.warnings(put('1'))).not.toContain('was-rounded');
});
