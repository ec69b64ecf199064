import { describe, expect, it } from 'vitest';
import { typedJob } from '../../../src/plan/typed/job.ts';

describe('a job that is named', () => {
  it.each([
    ["Won't start", [], 'won-t-start.yaml', "Won't start", null],
    [
      'Left cover weeps, Hollin 400 Twin, 1998',
      [],
      'left-cover-weeps.yaml',
      'Left cover weeps',
      'Hollin 400 Twin, 1998',
    ],
    [
      'Right cover, kick shaft seal leaks',
      [],
      'right-cover-kick-shaft-seal-leaks.yaml',
      'Right cover, kick shaft seal leaks',
      null,
    ],
    [
      'Pump weeps, drips on the belt, Ostrell lathe',
      [],
      'pump-weeps-drips-on-the-belt.yaml',
      'Pump weeps, drips on the belt',
      'Ostrell lathe',
    ],
    ['Drips ,', [], 'drips.yaml', 'Drips', null],
    ['Drips', ['Drips.yaml', 'drips-2.yaml'], 'drips-3.yaml', 'Drips', null],
    ['bench', [], 'bench-2.yaml', 'bench', null],
    ['???', [], null, '???', null],
    ['a'.repeat(60), [], `${'a'.repeat(40)}.yaml`, 'a'.repeat(60), null],
  ])('%s', (text, taken, file, job, machine) => {
    expect(typedJob(text, taken)).toEqual({ file, job, machine });
  });
});
