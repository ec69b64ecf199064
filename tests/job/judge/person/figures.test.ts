import { describe, expect, it } from 'vitest';
import {
  figuresLine,
  figureTexts,
  readAmount,
  readFigures,
  readHarm,
} from '../../../../src/job/form/typed-figures.ts';
import { readJob } from '../../../../src/job/read.ts';
import { Bench } from '../../bench.ts';

const JOB = `putback: 1
job: Left cover weeps oil
tasks:
  drain: {do: Drain the oil}
  seal: {decide: Renew the shaft seal?, now: {price: 12.50, takes: 40 min}} # mine
  bearing:
    decide: Renew the bearing?
    harm:
      chance: 1 in 20
      price: 60
diary:
`;
const weigh = (bench: Bench, task = 'seal') =>
  readJob(bench.text, 'a.yaml').upper.tasks.get(task)?.weigh;

describe('figures of a question', () => {
  it('go into its task, each behind its key, and out again with an undo', () => {
    const bench = new Bench(JOB);
    const texts = { now: '12.50, 40 min', later: '30, 3 h', chance: '1 in 6' };
    const entry = bench.mark({ do: 'figures', task: 'seal', texts });
    expect(entry).toMatchObject({
      verb: 'figured',
      value: 'now 12.50, 40 min; later 30, 3 h; chance 1 in 6',
      was: 'now 12.50, 40 min',
    });
    expect(bench.text).toContain(
      'seal: {decide: Renew the shaft seal?, now: {price: 12.50, takes: 40 min}, later: "30, 3 h", chance: 1 in 6} # mine',
    );
    expect(weigh(bench)).toMatchObject({ later: { price: '30', takes: '3 h' }, chance: '1 in 6' });
    const undo = bench.mark({ do: 'undo' });
    expect(bench.text).toBe(JOB);
    bench.mark({ do: 'undo', id: undo.id });
    expect(weigh(bench)).toMatchObject({ chance: '1 in 6' });
  });

  it('that were written on lines of their own give way to one text', () => {
    const bench = new Bench(JOB);
    bench.mark({ do: 'figures', task: 'bearing', texts: { harm: '1 in 10, 60' } });
    expect(weigh(bench, 'bearing')?.harm).toEqual({ chance: '1 in 10', price: '60', takes: null });
    bench.mark({ do: 'figures', task: 'bearing', texts: {} });
    expect(weigh(bench, 'bearing')).toBeUndefined();
    expect(readJob(bench.text, 'a.yaml').faults).toEqual([]);
  });

  it('that are the same already are not written, and other tasks have none', () => {
    const bench = new Bench(JOB);
    const same = { do: 'figures', task: 'seal', texts: { now: '12.50, 40 min' } } as const;
    expect(bench.ask(same)).toMatchObject({ ok: true, entry: null });
    expect(bench.refusal({ ...same, task: 'drain' })).toMatchObject({ code: 'no-such-task' });
  });

  it('somebody changed since stay as they are', () => {
    const bench = new Bench(JOB);
    bench.mark({ do: 'figures', task: 'seal', texts: { now: '20' } });
    bench.text = bench.text.replace('now: "20"', 'now: 25');
    expect(bench.warnings({ do: 'undo' })).toEqual(['file-changed']);
  });
});

it.each([
  ['12.50', { price: '12.50', takes: null }],
  ['12.50, 40 min', { price: '12.50', takes: '40 min' }],
  ['40 min', { price: null, takes: '40 min' }],
  ['12.50 and 1 h 30 min', { price: '12.50', takes: '1 h 30 min' }],
])('%s is a cost', (text, amount) => expect(readAmount(text)).toEqual(amount));

it.each([
  ['rarely', { chance: 'rarely', price: null, takes: null }],
  ['1 in 20, 60, 2 h', { chance: '1 in 20', price: '60', takes: '2 h' }],
  ['60', { chance: '60', price: null, takes: null }],
])('%s is harm', (text, harm) => expect(readHarm(text)).toEqual(harm));

it('a line reads back as it was written', () => {
  const line = 'now 12.50, 40 min; chance 1 in 6; harm 1 in 20, 60';
  expect(figuresLine(readFigures(line))).toBe(line);
  expect(readFigures('1 in 6')).toEqual({ chance: '1 in 6' });
  expect(figureTexts(undefined)).toEqual({});
});
