import { describe, expect, it } from 'vitest';
import { sayEntry } from '../../../../src/job/fold/say-entry.ts';
import { openTries } from '../../../../src/job/fold/tries.ts';
import { readCheckLine, readSuspectLine } from '../../../../src/job/form/typed-trace.ts';
import { readJob } from '../../../../src/job/read.ts';
import type { Named } from '../../../../src/model/types.ts';
import { Bench } from '../../bench.ts';

const JOB = `putback: 1
job: Won't start
machine: Tarn 125
pieces:
  tank:
suspects:
  coil: {what: Coil open, likely: often}
  plug: Plug wet
checks:
  spark: {check: Blue spark, bad: [coil, plug]}
  primary: {check: Coil primary, bad: coil, limit: 0.8..1.2 ohm}
diary:
`;

describe('a look', () => {
  it('is noted as it came out', () => {
    const entry = new Bench(JOB).mark({ do: 'look', check: 'spark', how: 'bad' });
    expect(entry).toMatchObject({ check: 'spark', verb: 'looked', value: 'bad' });
    expect(entry).not.toHaveProperty('judged');
  });

  it.each([
    ['0.4 ohm', 'bad', 'beyond'],
    ['0.94 ohm', 'good', 'within'],
    ['940 milliohm', 'good', 'within'],
  ])('with a reading of %s is judged by the limit', (reading, value, judged) => {
    expect(new Bench(JOB).mark({ do: 'look', check: 'primary', reading })).toMatchObject({
      ...{ verb: 'looked', value, result: reading, limit: '0.8..1.2 ohm', judged },
    });
  });

  it('that says otherwise than its limit needs a reason, which stays beside it', () => {
    const bench = new Bench(JOB);
    const wish = { do: 'look', check: 'primary', how: 'good', reading: '0.4 ohm' } as const;
    expect(bench.refusal(wish)).toEqual({ code: 'against-limit', limit: '0.8..1.2 ohm' });
    const because = 'the meter reads low';
    expect(bench.mark({ ...wish, because })).toMatchObject({ judged: 'by hand', because });
  });

  it('with a reading that is no figure is judged by nobody but the person, and says so', () => {
    const bench = new Bench(JOB);
    const wish = { do: 'look', check: 'primary', reading: 'fine' } as const;
    expect(bench.refusal(wish)).toMatchObject({ code: 'say-how' });
    const good = { ...wish, how: 'good' } as const;
    expect(bench.refusal(good)).toMatchObject({ code: 'unread-reading' });
    expect(bench.warnings({ ...wish, how: 'bad' })).toEqual(['unread-reading']);
    expect(bench.mark({ ...good, because: 'the needle stood still' })).toMatchObject({
      judged: 'by hand',
    });
  });

  it('with a bare figure a thousand times off is not judged: its unit is asked for', () => {
    const bench = new Bench(JOB);
    const wish = { do: 'look', check: 'primary', reading: '940' } as const;
    expect(bench.refusal(wish)).toMatchObject({ code: 'no-unit' });
    expect(bench.refusal({ ...wish, how: 'good' })).toMatchObject({ code: 'unread-reading' });
    expect(bench.entries).toEqual([]);
    expect(bench.mark({ ...wish, reading: '940 milliohm' })).toMatchObject({ value: 'good' });
  });

  it('that is good with nothing measured needs a reason; bad is told, and both stay beside the mark', () => {
    const bench = new Bench(JOB);
    const wish = { do: 'look', check: 'primary', how: 'good' } as const;
    expect(bench.refusal(wish)).toEqual({ code: 'no-reading', limit: '0.8..1.2 ohm' });
    expect(bench.warnings({ ...wish, how: 'bad' })).toEqual(['no-reading']);
    expect(bench.warnings({ ...wish, how: 'unclear' })).toEqual([]);
    expect(bench.mark({ ...wish, because: 'measured last week' })).toMatchObject({
      judged: 'no reading',
      limit: '0.8..1.2 ohm',
    });
    expect(bench.mark({ ...wish, how: 'bad' })).toMatchObject({ judged: 'no reading' });
  });

  it('at something that is not listed is wrong use', () => {
    expect(new Bench(JOB).refusal({ do: 'look', check: 'spork', how: 'good' })).toEqual({
      code: 'no-such-check',
      check: 'spork',
    });
  });
});

describe('a part changed to try', () => {
  it('is open until it is said how it went and where the old one is', () => {
    const bench = new Bench(JOB);
    const entry = bench.mark({ do: 'try', suspect: 'plug', put: 'new plug' });
    expect(sayEntry(entry, bench.job)).toBe('Plug wet: new plug put in to try');
    expect(openTries(bench.job)).toMatchObject([{ suspect: 'plug', put: 'new plug', how: null }]);
    expect(bench.warnings({ do: 'tried', suspect: 'plug', how: 'same' })).toEqual(['old-open']);
    bench.mark({ do: 'tried', suspect: 'plug', how: 'same' });
    expect(openTries(bench.job)).toMatchObject([{ suspect: 'plug', how: 'same' }]);
    const back = bench.mark({ do: 'tried', suspect: 'plug', old: 'back' });
    expect(back).toMatchObject({ suspect: 'plug', verb: 'looked', value: 'good', old: 'back' });
    expect(sayEntry(back, bench.job)).toBe(
      'Plug wet: with the new part the trouble is the same, the old one is back',
    );
    expect(openTries(bench.job)).toEqual([]);
  });

  it('while another is in is told as two at once', () => {
    const bench = new Bench(JOB);
    bench.mark({ do: 'try', suspect: 'plug', put: 'new plug' });
    const wish = { do: 'try', suspect: 'coil', put: 'coil of the donor' } as const;
    expect(bench.warnings(wish)).toEqual(['two-open']);
    bench.mark({ do: 'tried', suspect: 'plug', how: 'same', old: 'back' });
    expect(bench.warnings(wish)).toEqual([]);
  });

  it('cannot have gone any way before it was put in, nor be taken back under what rests on it', () => {
    const bench = new Bench(JOB);
    expect(bench.refusal({ do: 'tried', suspect: 'plug', how: 'gone' })).toMatchObject({
      code: 'nothing-tried',
    });
    const put = bench.mark({ do: 'try', suspect: 'plug', put: 'new plug' });
    const how = bench.mark({ do: 'tried', suspect: 'plug', how: 'gone', old: 'out' });
    expect(bench.refusal({ do: 'undo', id: put.id })).toEqual({ code: 'depends', ids: [how.id] });
  });
});

it('what would steer a terminal goes into the file as what it is', () => {
  const text = JOB.replace('Coil open', '"Coil\\u009b31m o\\u202epen"');
  const bench = new Bench(text);
  bench.mark({
    ...{ do: 'found', suspect: 'coil' },
    buy: { key: 'coil', fields: { what: 'Coil\u009b' } },
    test: { key: 'proof-coil', fields: { test: 'Spark\u202e', proves: 'spark' } },
  });
  expect(bench.text).not.toMatch(/[\u009b\u202e]/);
  expect(bench.text).toContain('found: "Coil\\u009b31m o\\u202epen"\n');
  const { upper } = readJob(bench.text, 'a.yaml');
  expect(upper.found).toBe('Coil\u009b31m o\u202epen');
  expect(upper.buys.get('coil')?.what).toBe('Coil\u009b');
});

describe('what it was', () => {
  const found = {
    do: 'found',
    suspect: 'coil',
    buy: { key: 'coil', fields: { what: 'Ignition coil' } },
    test: { key: 'proof-coil', fields: { test: 'Blue spark', proves: 'spark' } },
  } as const;

  it('stands in the file, its part on the list, its proof among the tasks', () => {
    const bench = new Bench(JOB);
    bench.mark(found);
    const { upper, faults } = readJob(bench.text, 'a.yaml');
    expect(faults).toEqual([]);
    expect(upper.found).toBe('Coil open');
    expect(bench.text).toContain('machine: Tarn 125\nfound: Coil open\npieces:');
    expect(upper.buys.get('coil')).toMatchObject({ what: 'Ignition coil' });
    expect(upper.tasks.get('proof-coil')).toMatchObject({ verb: 'test', proves: ['spark'] });
    expect(bench.ask(found)).toMatchObject({ ok: true, entry: null });
  });

  it('goes out of the file again with the mark, and what followed with it', () => {
    const bench = new Bench(JOB.replace('likely: often', 'likely: often, part: Ignition coil'));
    bench.mark(found);
    const undo = bench.mark({ do: 'undo' });
    const { upper, faults } = readJob(bench.text, 'a.yaml');
    expect(faults).toEqual([]);
    expect([upper.found, upper.tasks.size, upper.buys.size]).toEqual([null, 0, 0]);
    expect(bench.warnings({ do: 'undo', id: undo.id })).toEqual(['say-anew']);
    bench.mark({ do: 'undo', id: undo.id });
    expect(readJob(bench.text, 'a.yaml').upper.found).toBe('Coil open');
  });

  it('of a second fault stands behind the first, and an undo leaves the first', () => {
    const bench = new Bench(JOB);
    bench.mark(found);
    bench.mark({ do: 'found', suspect: 'plug' });
    expect(readJob(bench.text, 'a.yaml').upper.found).toBe('Coil open; Plug wet');
    bench.mark({ do: 'undo' });
    expect(readJob(bench.text, 'a.yaml').upper.found).toBe('Coil open');
  });

  it('stays in the file where somebody wrote more of it', () => {
    const bench = new Bench(JOB);
    bench.mark(found);
    bench.text = bench.text.replace('found: Coil open', 'found: Coil open, and its lead');
    expect(bench.warnings({ do: 'undo' })).toEqual(['file-changed']);
    bench.mark({ do: 'undo' });
    expect(bench.text).toContain('found: Coil open, and its lead');
  });
});

describe('an undo of what was typed', () => {
  const typed = (bench: Bench) => {
    const read = readSuspectLine('Switch corroded', bench.job.upper) as Named;
    return bench.mark({ do: 'list', section: 'suspects', ...read });
  };

  it('leaves in the file what a check there names, says so, and the file has no fault', () => {
    const bench = new Bench(JOB);
    const entry = typed(bench);
    bench.text = bench.text.replace('[coil, plug]', '[coil, plug, switch-corroded]');
    const undo = { do: 'undo', id: entry.id } as const;
    expect(bench.warnings(undo)).toEqual(['file-stays']);
    bench.mark(undo);
    expect(readJob(bench.text, 'a.yaml').faults).toEqual([]);
    expect(bench.job.upper.suspects.has('switch-corroded')).toBe(true);
  });

  it('waits for what was marked of it', () => {
    const bench = new Bench(JOB);
    const entry = typed(bench);
    const put = bench.mark({ do: 'try', suspect: 'switch-corroded', put: 'the donor’s' });
    const refused = { code: 'depends', ids: [put.id] };
    expect(bench.refusal({ do: 'undo', id: entry.id })).toEqual(refused);
  });
});

describe('the look that proves what was found', () => {
  const proved = (how: 'good' | 'bad' | 'unclear', text = JOB) => {
    const bench = new Bench(text);
    bench.mark({
      ...{ do: 'found', suspect: 'coil' },
      test: { key: 'proof-coil', fields: { test: 'Blue spark', proves: 'spark' } },
    });
    return { bench, entry: bench.mark({ do: 'look', check: 'spark', how }) };
  };

  it.each([
    ['good', 'passed'],
    ['bad', 'failed'],
  ] as const)('that came out %s is its test too', (how, value) => {
    const { bench, entry } = proved(how);
    expect(entry).toMatchObject({ verb: 'done', value, task: 'proof-coil' });
    expect(bench.job.tasks.get('proof-coil')?.done).toBe(value);
    expect(bench.ask({ do: 'look', check: 'spark', how })).toMatchObject({ entry: null });
    bench.mark({ do: 'undo' });
    expect(bench.job.tasks.get('proof-coil')?.done).toBeNull();
  });

  it('asks for a reading where it has a limit, as its test does', () => {
    const { bench } = proved('unclear', JOB.replace('[coil, plug]}', '[coil], limit: 3..5 mm}'));
    bench.text = bench.text.replace('{test: Blue spark,', '{test: Blue spark, limit: 3..5 mm,');
    const look = { do: 'look', check: 'spark', how: 'good' } as const;
    expect(bench.refusal(look)).toMatchObject({ code: 'no-reading' });
    expect(bench.mark({ ...look, because: 'seen' })).toMatchObject({ value: 'passed' });
  });

  it('stays beside its reading', () => {
    const { bench } = proved('unclear', JOB.replace('[coil, plug]}', '[coil], limit: 3..5 mm}'));
    bench.text = bench.text.replace('{test: Blue spark,', '{test: Blue spark, limit: 3..5 mm,');
    const reading = '4 mm';
    expect(bench.mark({ do: 'look', check: 'spark', reading })).toMatchObject({
      ...{ verb: 'done', value: 'done', result: reading, limit: '3..5 mm', judged: 'within' },
    });
    expect(bench.mark({ do: 'look', check: 'spark', reading: '1 mm' })).toMatchObject({
      ...{ verb: 'done', value: 'failed', result: '1 mm', judged: 'beyond' },
    });
  });

  it('is no test while it told nothing, and a found fault stays while its test stands', () => {
    const { bench, entry } = proved('unclear');
    expect(entry).toMatchObject({ verb: 'looked', value: 'unclear' });
    const test = bench.mark({ do: 'look', check: 'spark', how: 'good' });
    const [found] = bench.entries;
    const refused = { code: 'depends', ids: [test.id] };
    expect(bench.refusal({ do: 'undo', id: found!.id })).toEqual(refused);
  });
});

describe('a reading without a limit', () => {
  it('is asked for its word, with what the check lacks', () => {
    const bench = new Bench(
      JOB.replace('checks:\n', 'checks:\n  volts: {check: Voltage, bad: coil}\n'),
    );
    const verdict = bench.ask({ do: 'look', check: 'volts', reading: '12.6 V' });
    expect(verdict).toMatchObject({
      refused: {
        code: 'say-how',
        say: 'Voltage has no limit that says what 12.6 V means. Say good, bad or unclear.',
      },
    });
  });
});

describe('a line that is typed', () => {
  const { upper } = readJob(JOB, 'a.yaml');
  const suspect = (line: string) => readSuspectLine(line, upper);
  const check = (line: string) => readCheckLine(line, upper, ['plug', 'coil']);

  it.each<[string, object]>([
    ['Tap blocked', { what: 'Tap blocked' }],
    ['Float leaks, often, 30 min', { what: 'Float leaks', likely: 'often', takes: '30 min' }],
    ['Coil fails hot, likely', { what: 'Coil fails hot', likely: 'often' }],
    [
      'Coil fails hot, Unlikely, 5 min',
      { what: 'Coil fails hot', likely: 'rarely', takes: '5 min' },
    ],
    ['Coil, sometimes', { what: 'Coil', likely: 'now and then' }],
    ['Coil, 2 hours 5 mins', { what: 'Coil', takes: '2 hours 5 mins' }],
    ['Tap, reserve side, 2', { what: 'Tap, reserve side', likely: '2' }],
    [
      'Filter full, in tank, part HL-7 filter',
      { what: 'Filter full', piece: 'tank', part: 'HL-7 filter' },
    ],
  ])('%s is a suspect', (line, fields) => {
    expect(suspect(line)).toMatchObject({ fields });
    expect(Object.keys((suspect(line) as Named).fields).sort()).toEqual(Object.keys(fields).sort());
  });

  it.each([
    ['Tap, rarly', 'rarly was not read. Did you mean rarely?'],
    ['Tap, unlikly', 'unlikly was not read. Did you mean unlikely?'],
    ['Tap, likely, rarely', 'likely: that is said twice.'],
    ['Runs on, bad: tank vent', 'Bad is how a look comes out that shows the fault'],
    ['Runs on, good', 'Bad is how a look comes out that shows the fault'],
    ['Tap, rarely, 30 min, in tonk', 'No piece tonk. Did you mean tank?'],
    ['Tap, rarely, and the lead', 'What stands behind rarely was not read.'],
    ['Tap, 30 mn', '30 mn is neither a time nor how likely it is.'],
    ['Tap, -3', '-3 is neither a time nor how likely it is.'],
    ['Tap, often, rarely', 'often: that is said twice.'],
    ['Tap, part', 'part: say which part'],
    [`Tap ${'and lead '.repeat(12)}`, 'That is a long name'],
  ])('%s is asked about: not all of it was read', (line, say) => {
    expect((suspect(line) as { say: string }).say).toContain(say);
  });

  it.each([
    ['Coil open rarely', 'rarely'],
    ['Coil open 30 min', '30 min'],
    ['Coil open very likely', 'very likely'],
    ['Coil open now and then in tank', 'now and then in tank'],
  ])('%s is taken whole, and that is told', (line, rest) => {
    const verdict = new Bench(JOB).ask({
      ...{ do: 'list', section: 'suspects' },
      ...(suspect(line) as Named),
    });
    expect(verdict).toMatchObject({
      warnings: [{ code: 'taken-whole', say: expect.stringContaining(`“${rest}” counts`) }],
    });
  });

  it.each<[string, object]>([
    ['Blue spark: 1 2, 3 min', { check: 'Blue spark', bad: ['plug', 'coil'], takes: '3 min' }],
    ['Runs on, bad: coil', { check: 'Runs on', bad: ['coil'] }],
    ['Runs on - bad: coil', { check: 'Runs on', bad: ['coil'] }],
    ['Runs on: bad: coil', { check: 'Runs on', bad: ['coil'] }],
    ['Coil, 3..5 ohm, if bad: coil', { check: 'Coil', limit: '3..5 ohm', bad: ['coil'] }],
    ['Coil, 3..5 ohm, 5 min: coil', { check: 'Coil', limit: '3..5 ohm', takes: '5 min' }],
    ['Voltage 12.4..12.8 V: coil, 5 min', { check: 'Voltage', limit: '12.4..12.8 V' }],
    ['Cylinder 1 to 4: coil', { check: 'Cylinder 1 to 4' }],
    ['Cap, left, right: coil', { check: 'Cap, left, right', bad: ['coil'] }],
    ['Cap: coil, plug', { check: 'Cap', bad: ['coil', 'plug'] }],
    ['Coil: coil op, at least 3 V', { check: 'Coil', bad: ['coil'], limit: 'at least 3 V' }],
    ['Hose: along coil, spark, behind tank, when hot', { along: ['coil', 'spark'] }],
  ])('%s is a check', (line, fields) => {
    expect(check(line)).toMatchObject({ fields });
  });

  it.each([
    ['Blue spark', 'Say behind a colon what it would show: Blue spark: coil, plug.'],
    [
      'Runs on, good: coil',
      'Bad is how a look comes out that shows the fault, and good clears. Say it so, like this: Blue spark at the plug: coil, plug.',
    ],
    [
      'Runs on, rarely: coil',
      'rarely: that is said of what it may be, not of a look. Like this: Coil open, rarely, 30 min, in carburettor.',
    ],
    ['Blue spark: plgu', 'No suspect plgu. Did you mean plug?'],
    ['Blue spark: 1 3', 'There is no number 3 on the list.'],
    ['Blue spark: 1, behind tonk', 'No piece tonk. Did you mean tank?'],
    [': coil', 'Say what is looked at, then what it would show: Spark: 1, 2.'],
  ])('%s is asked about', (line, say) => {
    expect(check(line)).toEqual({ say });
  });

  it('Runs on bad is a look taken whole, and that is told', () => {
    const read = check('Runs on bad: coil') as Named;
    const verdict = new Bench(JOB).ask({ do: 'list', section: 'checks', ...read });
    const say = expect.stringContaining('“bad” counts as part of the name.');
    expect(verdict).toMatchObject({ warnings: [{ code: 'taken-whole', say }] });
  });

  it('goes into the file, and out of it with an undo, and in again', () => {
    const bench = new Bench('putback: 1\njob: Drips\ndiary:\n');
    for (const line of ['Tap blocked, often', 'Hose split']) {
      const read = readSuspectLine(line, bench.job.upper) as Named;
      bench.mark({ do: 'list', section: 'suspects', ...read });
    }
    const read = readCheckLine('Runs freely: 1 2, 2 min', bench.job.upper, [
      'tap-blocked',
      'hose-split',
    ]) as Named;
    bench.mark({ do: 'list', section: 'checks', ...read });
    const whole = bench.text;
    expect(readJob(whole, 'a.yaml').faults).toEqual([]);
    expect(whole).toContain(
      'suspects:\n  tap-blocked: {what: Tap blocked, likely: often}\n  hose-split: {what: Hose split}\nchecks:\n  runs-freely: {check: Runs freely, bad: [tap-blocked, hose-split], takes: 2 min}\n',
    );
    const undo = bench.mark({ do: 'undo' });
    expect(bench.job.upper.checks.size).toBe(0);
    bench.mark({ do: 'undo', id: undo.id });
    expect(bench.job.upper.checks.get('runs-freely')).toEqual(
      readJob(whole, 'a.yaml').upper.checks.get('runs-freely'),
    );
    bench.text = bench.text.replace('likely: often', 'likely: rarely');
    const [first, , check] = bench.entries;
    expect(bench.refusal({ do: 'undo', id: first!.id })).toEqual({
      ...{ code: 'depends', ids: [check!.id] },
    });
    bench.mark({ do: 'undo', id: check!.id });
    expect(bench.warnings({ do: 'undo', id: first!.id })).toEqual(['file-changed']);
  });
});
