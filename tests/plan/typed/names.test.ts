import { describe, expect, it } from 'vitest';
import { namesOffered, typedNames } from '../../../src/plan/typed/names.ts';
import { typedRuns } from '../../../src/plan/typed/runs.ts';
import { Bench } from '../../job/bench.ts';
import { LEFT_COVER } from '../../screens/covers.ts';

const { job } = new Bench(LEFT_COVER);
const typed = (text: string) => typedNames(text, job, 'hose');

describe('pieces named at the bench', () => {
  it('by name, by key, or by as much as leaves no doubt', () => {
    for (const text of ['Alternator cover', 'alternator', 'ALT', 'alternator-cover']) {
      expect(typed(text)).toEqual({ keys: ['alternator'] });
    }
  });

  it('several of them, each once', () => {
    for (const text of [
      'alternator, gear lever',
      'alternator and gear',
      'alt; gear-lever & alt',
      ' alternator ,, gear lever,',
    ]) {
      expect(typed(text)).toEqual({ keys: ['alternator', 'gear-lever'] });
    }
  });

  it('mistyped: the near one is offered', () => {
    expect(typed('gaer lever')).toEqual({
      fault: 'No piece gaer lever in this job. Did you mean Gear lever?',
    });
    expect(typed('piano')).toEqual({ fault: 'No piece piano in this job.' });
  });

  it('never itself, never nothing, never one of two', () => {
    expect(typed('hose')).toEqual({ fault: 'That is the piece itself.' });
    expect(typed(' , ')).toEqual({ fault: 'Nothing is typed yet.' });
    const two = LEFT_COVER.replace('  hose:\n', '  hose:\n  gear-plate:\n');
    expect(typedNames('gear', new Bench(two).job, 'hose')).toEqual({
      fault: 'Which one: Gear lever and Gear plate?',
    });
  });

  it('with "and" in a name of its own', () => {
    const text = LEFT_COVER.replace('  hose:\n', '  hose:\n  nut-and-washer:\n');
    expect(typedNames('nut and washer', new Bench(text).job, 'hose')).toEqual({
      keys: ['nut-and-washer'],
    });
  });

  it('are offered to whoever does not know them', () => {
    expect(namesOffered(job, 'hose')).toBe('Gear lever, Sprocket cover and Alternator cover.');
    expect(namesOffered(new Bench('putback: 1\njob: x\npieces: {hose: }\n').job, 'hose')).toBe(
      'No other piece is noted yet.',
    );
  });
});

describe('a hose in the other hand', () => {
  it.each([
    ['over the tube', [['routes', 'over the tube']]],
    ['marks: blue paint', [['marks', 'blue paint']]],
    [
      'over the tube; marks: blue paint',
      [
        ['routes', 'over the tube'],
        ['marks', 'blue paint'],
      ],
    ],
    [
      'over the tube. Mark: a dot, marks: two',
      [
        ['routes', 'over the tube'],
        ['marks', 'a dot, marks: two'],
      ],
    ],
    ['past the punch marks', [['routes', 'past the punch marks']]],
    ['marks:', []],
  ])('%s', (text, puts) => {
    expect(typedRuns(text).map((p) => [p.key, p.text])).toEqual(puts);
  });
});
