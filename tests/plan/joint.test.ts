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
      cures: null,
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
      cures: 'sealant cures 24 h',
      lip: true,
    });
  });

  it.each([
    ['sealant cures 12 h', 'sealant cures 12 h'],
    ['grey silicone, open 5 min, cure time 24 h', 'silicone cure time 24 h'],
    ['new gasket; full cure after 1 day', 'full cure after 1 day'],
    ['new gasket, sets in 2 h', 'sets in 2 h'],
    ['sealant, cures slowly', null],
  ])('how long it cures stands in the words of the file: %s', (text, cures) => {
    expect(readJoint([text]).cures).toBe(cures);
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

describe('what is only forbidden', () => {
  it.each(['no grease on the lip', 'faces clean of grease', 'free from grease', 'never greased'])(
    '%s takes no grease',
    (text) => {
      expect(readJoint([text]).consumables).toEqual([]);
    },
  );
});
