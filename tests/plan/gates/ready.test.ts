/** What has to be ready before a joint is made, and before it closes. */
import { describe, expect, it } from 'vitest';
import { gate } from '../../../src/plan/gates/gate.ts';
import type { Moment } from '../../../src/plan/gates/items.ts';
import { boltsOff, boltsOn, jobOf, NOW, off, on, type Said } from '../make.ts';

const said = (moment: Moment, text: string, lines: readonly Said[], now = NOW) =>
  Object.fromEntries(
    gate(jobOf(text, lines), moment, 'cover', now).items.map((i) => [i.key, i.say]),
  );
const cover = (more: string, kinds = '{S: M6x25}') =>
  `bolts: ${kinds}\npieces:\n  cover: {name: Left cover, bolts: S S, ${more}}\n`;
const away = boltsOff('cover', 'S S');

describe('the wrench is set to a figure', () => {
  it('the one that is printed', () => {
    expect(said('sealing', cover('torque: "10 N·m, manual 2-17"'), away).wrench).toBe(
      'Wrench set for 10 N·m.',
    );
  });

  it('that of the first pass, and then those of the next', () => {
    const passes = cover('torque: 10 N·m, passes: [snug, part 5 N·m, full, again after 50 km]');
    expect(said('sealing', passes, away).wrench).toBe('Wrench set: part 5 N·m, then full 10 N·m.');
    const m8 = cover('torque: 24 N·m', '{S: M8x30}');
    expect(said('sealing', m8, away).wrench).toBe('Wrench set: part 12 N·m, then full 24 N·m.');
  });

  it('with the holes that take their own', () => {
    const own = cover('torque: 10 N·m, holes: {2: {torque: 6 N·m}}');
    expect(said('sealing', own, away).wrench).toBe('Wrench set for 10 N·m. 2 takes 6 N·m.');
  });

  it('that has to be looked up, where the file has only words; none where it has nothing', () => {
    expect(said('sealing', cover('torque: see the manual'), away).wrench).toBe(
      'Look the torque up: see the manual.',
    );
    expect(said('sealing', cover('into: cast iron'), away).wrench).toBeUndefined();
  });
});

describe('blind holes', () => {
  it('are blown dry where bolts go into them, not under nuts on studs', () => {
    expect(said('sealing', cover('joint: new gasket'), away).blind).toContain('cracks the boss');
    expect(said('sealing', cover('joint: new gasket', '{S: M6 nut}'), away).blind).toBeUndefined();
  });
});

describe('seals, levers, hoses and threads', () => {
  it('a new seal has a lip, though the joint says nothing of it', () => {
    const buy = '\nbuy: {seal: {what: shaft seal 20x30x7, for: cover on}}';
    expect(said('sealing', cover('joint: new gasket') + buy, away).lip).toContain('the right way');
    expect(said('sealing', cover('joint: sealant on the edge'), away).lip).toBeUndefined();
  });

  it('what runs by it runs as it did', () => {
    expect(said('sealing', cover('routes: behind the starter cable'), away).routes).toBe(
      'Runs as it did: behind the starter cable.',
    );
  });

  it('levers and cables under it stand in the position in which it slides on', () => {
    const text = `${cover('joint: new gasket')}  release-lever: {under: cover}\n  plate: {under: cover}\n`;
    expect(said('sealing', text, away).position).toBe(
      'In the position in which it slides on: Release lever.',
    );
  });

  it('one that is still off is in no position', () => {
    const text = `${cover('joint: new gasket')}  release-lever: {under: cover}\n`;
    const lines = [...away, off('release-lever')];
    expect(said('sealing', text, lines).position).toBeUndefined();
    expect(said('sealing', text, [...lines, on('release-lever')]).position).toBeDefined();
  });

  it.each([
    ['joint: "medium threadlocker on all bolts"', '{S: M6x25}', ', medium strength'],
    ['holes: {2: {note: high strength threadlocker}}', '{S: M6x25}', ', high strength'],
    ['into: cast iron', '{S: {thread: M6, length: 25, note: threadlocker}}', ''],
  ])('threadlocker wants clean dry threads: %s', (more, kinds, grade) => {
    expect(said('sealing', cover(more, kinds), away).locker).toBe(
      `Threads clean and dry, no oil on them, for the threadlocker${grade}.`,
    );
  });

  it('no threadlocker is none', () => {
    const text = cover('joint: "new gasket, no threadlocker"');
    expect(said('sealing', text, away).locker).toBeUndefined();
  });

  it('a joint is told word for word: dry, sealed here and not there, tacked, what must not touch it', () => {
    const words = [
      'new gasket, dry',
      'sealant only at the two seams, none at the oil way',
      'tacked with a smear of grease',
      'no oil on the rubber',
    ];
    const items = said('sealing', cover(`joint: "${words.join('; ')}"`), away);
    expect(words.map((_, i) => items[`joint-${i + 1}`])).toEqual(words.map((w) => `Joint: ${w}.`));
  });
});

describe('what went in must come out', () => {
  const text = `${cover('joint: new gasket')}  lower: {under: cover, bolts: S}\n  other: {bolts: S}\n`;
  const insert = (piece: string, hole = '1'): Said => ({
    piece,
    hole: [hole],
    state: 'mended',
    says: 'wire insert',
  });
  const pulled = (piece: string, hole = '1'): Said => ({ piece, hole: [hole], state: 'pulled' });

  it('tangs of this opening and of those under it are counted, not of another', () => {
    const lines = [
      ...away,
      ...boltsOff('lower', 'S'),
      ...boltsOff('other', 'S'),
      ...['cover', 'lower', 'other'].flatMap((p) => [pulled(p), insert(p)]),
    ];
    expect(said('closing', text, lines).tangs).toBe('Insert tangs counted: 2.');
  });

  it('tangs of an earlier round came out then', () => {
    const once = [...away, pulled('cover'), insert('cover'), ...boltsOn('cover', 'S S')];
    expect(said('closing', text, [...once, ...away]).tangs).toBeUndefined();
    const twice = [...once, ...away, pulled('cover', '2'), insert('cover', '2')];
    expect(said('closing', text, twice).tangs).toBe('Insert tangs counted: 1.');
  });

  it('what went in at a lower opening stops the joint above it too', () => {
    const lines: Said[] = [...away, ...boltsOff('lower', 'S'), { piece: 'lower', inside: 'plug' }];
    const items = gate(jobOf(text, lines), 'sealing', 'cover', NOW).items;
    expect(items.find((i) => i.key === 'inside-lower-plug')).toMatchObject({
      stops: true,
      done: false,
    });
  });

  it('what went in nobody noted where is asked about, and does not stop', () => {
    const lines: Said[] = [...away, { inside: '2 rags', at: '2026-04-30T18:00:00+02:00' }];
    const item = gate(jobOf(text, lines), 'closing', 'cover', NOW).items.find(
      (i) => i.key === 'elsewhere-rag',
    );
    expect(item).toMatchObject({
      say: 'Not in here: 2 rags went in on 30 April, nobody noted where.',
      stops: false,
      done: false,
    });
    // What went in here stops, and is not asked about a second time.
    const here: Said[] = [...away, { piece: 'cover', inside: 'rag' }];
    expect(said('closing', text, here)['elsewhere-rag']).toBeUndefined();
    const out = [...lines, { cleared: 'all' }];
    expect(said('closing', text, out)['elsewhere-rag']).toBeUndefined();
  });
});

describe('before prying', () => {
  it('tells bolted pieces over it from what is still connected, and what comes with it', () => {
    const text = `
bolts: {S: M6x25}
pieces:
  guard: {bolts: S}
  lead: {}
  cover: {under: [guard, lead], bolts: S S}
  dipstick: {along: cover}
`;
    expect(said('prying', text, [])).toMatchObject({
      over: 'Still over it: Guard.',
      connected: 'Still connected: Lead.',
      along: 'Comes off with it: Dipstick.',
    });
    const lines = [...boltsOff('guard', 'S'), { piece: 'lead', removed: 'aside' }];
    const less = said('prying', text, lines);
    expect([less.over, less.connected]).toEqual([undefined, undefined]);
  });
});

it('the wrench line shows what is printed of a hole beside what is true of it', () => {
  const text = `bolts: {S: M6x25}
pieces: {cover: {bolts: S S, torque: 12 N·m, holes: {1: {torque: 10 N·m}}}}`;
  const lines = [
    { piece: 'cover', hole: ['1'], corrected: 'torque', was: '10 N·m', says: '9 N·m' },
  ];
  const items = gate(jobOf(text, lines), 'sealing', 'cover', '2026-05-02T10:00:00+02:00').items;
  expect(items.find((i) => i.key === 'wrench')?.say).toContain(
    '1 takes 9 N·m (not 10 N·m, as printed)',
  );
});
