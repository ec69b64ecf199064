import { describe, expect, it } from 'vitest';
import { Bench } from '../../bench.ts';

const JOB = 'putback: 1\njob: Oil\nmachine: Hollin 400, 41.230 km\ndiary:\n';
const reading = (text: string) => ({ do: 'reading', reading: text }) as const;

describe('what a counter says', () => {
  it.each(['41400 km', '41,400 km', '26000 mi', '120 h', '120 operating hours', '41230 km'])(
    '%s is noted',
    (text) => {
      expect(new Bench(JOB).mark(reading(text))).toMatchObject({ verb: 'reading', value: text });
    },
  );

  it.each([
    '-5 km',
    '−5 km',
    '1e300 km',
    '99999999999 km',
    '9999999 h',
    'much',
    '',
    'km',
    'from 10 to 41400 km',
    '41400 km 7',
  ])('%s is refused, with how it is written', (text) => {
    const say = expect.stringContaining('write it as the counter shows it: 41400 km');
    expect(new Bench(JOB).ask(reading(text))).toMatchObject({
      refused: { code: 'bad-reading', overrulable: false, say },
    });
  });

  it('that runs back is asked about, and counts with a reason; another counter of the machine is none of it', () => {
    const bench = new Bench(JOB);
    expect(bench.ask(reading('41000 km'))).toMatchObject({
      refused: {
        code: 'runs-back',
        overrulable: true,
        say: 'Before it said 41.230 km: a counter does not run back. A slip of the pen, or another counter?',
      },
    });
    bench.mark(reading('10 h'));
    bench.mark({ ...reading('5 km'), because: 'new counter' });
    bench.mark(reading('6 km'));
    expect(bench.ask(reading('9 h'))).toMatchObject({ refused: { code: 'runs-back' } });
  });
});
