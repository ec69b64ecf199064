import { describe, expect, it } from 'vitest';
import { readJoint } from '../../../src/plan/seal/joint.ts';

describe('what the words of a joint ask for', () => {
  it('a dry gasket', () => {
    expect(readJoint(['new gasket, dry; dowels at 2 and 8'])).toEqual({
      parts: ['new gasket, dry', 'dowels at 2 and 8'],
      renew: ['gasket'],
      consumables: [],
      open: null,
      stand: null,
      cure: null,
      cures: null,
      untimed: null,
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
    // [joint, minutes open, minutes it stands before it is closed, minutes until it is cured]
    ['sealant, open 5-10 min, cures 12-24 h', 5, null, 1440],
    ['sealant, open 1/2 h, cures 1 1/2 hours', 30, null, 90],
    ['sealant, cures 1,5 h', null, null, 90],
    ['sealant, let it set 10 min, then close; cures 24 h', null, 10, 1440],
    ['sealant: let it set 10 min, then close, cures 24 h', null, 10, 1440],
    ['sealant; let it set 10 min then close; cures 24 h', null, 10, 1440],
    ['sealant. Leave it 10-15 min before closing. Cures 24 h.', null, 15, 1440],
    ['sealant, close after 10 min, within 20 min, cures 24 h', 20, 10, 1440],
    ['sealant, sets in 2 h, full cure 24 h', null, null, 1440],
    ['sealant, cures within 24 h', null, null, 1440],
    ['sealant, skins in 10 min and sets in 12 h', 10, null, 720],
    ['let it set 10 min, cures 24 h', null, null, 1440],
    ['sealant, dries in 24 h', null, null, 1440],
    ['sealant, hardens in 12 h', null, null, 720],
    ['sealant, load after 24 h', null, null, 1440],
    ['sealant, no oil for 24 h', null, null, 1440],
    ['sealant, full strength after 3 days', null, null, 4320],
    ['sealant, working time 8 min, cures 24 h', 8, null, 1440],
    ['sealant, must be closed in 10 min', 10, null, null],
    ['sealant cures 24/48 h', null, null, 2880],
  ])('%s: each time with its meaning', (text, open, stand, cure) => {
    const read = readJoint([text]);
    const minutes = (seconds: number | null) => seconds && seconds / 60;
    expect([read.open, read.stand, read.cure].map(minutes)).toEqual([open, stand, cure]);
  });

  it.each([
    ['sealant, 24 h', '24 h'],
    ['sealant (wait 24 h)', 'sealant (wait 24 h)'],
    ['sealant cures 24 h per mm', 'sealant cures 24 h per mm'],
    ['sealant, 2 mm in 24 h', null],
    ['sealant cures forty-seven hours', 'sealant cures forty-seven hours'],
    ['sealant, open 10 min', null],
    ['sealant, cures 24 h, 10 min', null],
    ['new gasket, soak it 10 min', null],
  ])('how long it cures was not read: %s', (text, untimed) => {
    expect(readJoint([text]).untimed).toBe(untimed);
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
