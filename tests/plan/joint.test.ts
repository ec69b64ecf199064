import { describe, expect, it } from 'vitest';
import { readJoint } from '../../src/plan/joint.ts';

describe('what the words of a joint ask for', () => {
  it('a dry gasket', () => {
    expect(readJoint(['new gasket, dry; dowels at 2 and 8'])).toEqual({
      parts: ['new gasket, dry', 'dowels at 2 and 8'],
      renew: ['gasket'],
      consumables: [],
      open: null,
      cure: null,
      lip: false,
    });
  });

  it('sealant with the times on its tube', () => {
    const joint = readJoint([
      'sealant on the case half, open 10 min, cures 24 h',
      'seal lip inwards',
    ]);
    expect(joint).toMatchObject({
      consumables: [{ what: 'sealant', grade: null }],
      open: 600,
      cure: 86_400,
      lip: true,
    });
  });

  it.each([
    ['medium threadlocker, clean and dry', [{ what: 'threadlocker', grade: 'medium' }]],
    ['thread-locked, high strength', [{ what: 'threadlocker', grade: 'high' }]],
    ['grease on the lip', [{ what: 'grease', grade: null }]],
    ['no grease on the rubber', []],
    ['never sealant at the oil way', []],
    ['dry, without sealant', []],
  ])('%s', (text, consumables) => {
    expect(readJoint([text]).consumables).toEqual(consumables);
  });
});
