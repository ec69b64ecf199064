import { describe, expect, it } from 'vitest';
import { asPrinted } from '../../../src/model/said.ts';
import { roundAgain } from '../../../src/plan/tests/again.ts';
import { type TestItem, testList } from '../../../src/plan/tests/testlist.ts';
import { boltsOff, boltsOn, done, jobOf, NOW, off, on, type Said } from '../make.ts';

const short = (items: TestItem[]) => items.map((i) => [i.test, i.say, i.when, i.state]);
const there = (...pieces: string[]) => pieces.map((p) => off(p));
const back = (...pieces: string[]) => pieces.map((p) => on(p));

describe('tests that follow from what was disturbed', () => {
  const NAMES = [
    'alternator-cover',
    'breather-hose',
    'throttle-cable',
    'horn-switch',
    'fuel-pipe',
    'main-loom',
    'exhaust-pipe',
    'brake-caliper',
    'gear-lever',
    'mirror',
  ];
  const TEXT = `pieces: {${NAMES.map((n) => `${n}: {}`).join(', ')}}`;

  it('are those of its sort', () => {
    const list = testList(jobOf(TEXT, [...there(...NAMES), ...back(...NAMES)]), NOW);
    expect(short(list)).toEqual([
      ['alternator-cover-weeps', 'Alternator cover: weeps when hot?', 'hot', 'due'],
      ['breather-hose-leaks', 'Breather hose: leaks under pressure?', 'under pressure', 'due'],
      ['throttle-cable-play', 'Throttle cable: play at both locks?', null, 'due'],
      ['horn-switch-lights', 'Horn switch: switch and light work?', null, 'due'],
      ['fuel-pipe-leaks', 'Fuel pipe: leaks under pressure?', 'under pressure', 'due'],
      ['fuel-pipe-smell', 'Fuel pipe: smell or drop of fuel?', 'fuel on', 'due'],
      ['main-loom-works', 'Main loom: what it feeds works?', null, 'due'],
      ['exhaust-pipe-blows', 'Exhaust pipe: blows at the joint?', 'running', 'due'],
      ['brake-caliper-holds', 'Brake caliper: firm, and holds at a walk?', null, 'due'],
      ['gear-lever-moves', 'Gear lever: moves free and comes back?', null, 'due'],
    ]);
  });

  it('only of pieces that came off, and only once they are back', () => {
    expect(testList(jobOf(TEXT), NOW)).toEqual([]);
    const one = testList(jobOf(TEXT, there('breather-hose')), NOW);
    expect(short(one)).toEqual([
      ['breather-hose-leaks', 'Breather hose: leaks under pressure?', 'under pressure', 'waits'],
    ]);
  });

  it('a cover behind which no liquid stands weeps nothing', () => {
    const text = 'pieces: {belt-cover: {}, side-cover: {}}';
    const back = [...there('belt-cover'), ...there('side-cover')];
    expect(testList(jobOf(text, back), NOW).map((i) => i.test)).toEqual(['side-cover-weeps']);
  });

  it('whatever has a joint can weep', () => {
    const text = 'pieces: {plate: {joint: gasket}}';
    expect(testList(jobOf(text, there('plate')), NOW).map((i) => i.test)).toEqual(['plate-weeps']);
  });

  it('can be passed and failed, each in its round', () => {
    const away = there('breather-hose');
    const at = (lines: Said[]) => testList(jobOf(TEXT, lines), NOW)[0]?.state;
    const lines = [
      ...away,
      ...back('breather-hose'),
      { task: 'breather-hose-leaks', done: 'failed' },
    ];
    expect(at(lines)).toBe('failed');
    expect(at([...lines, ...away])).toBe('waits');
    expect(at([...lines, ...away, ...back('breather-hose')])).toBe('due');
    const passed = [...lines, { task: 'breather-hose-leaks', done: 'passed', result: 'dry' }];
    expect(testList(jobOf(TEXT, passed), NOW)[0]).toMatchObject({ state: 'passed', result: 'dry' });
  });

  it('a test of the file that speaks of it stands for it', () => {
    const text = `pieces: {cover: {}}
tasks:
  fill: {do: Fill, after: cover on}
  idle: {test: Five minutes at idle, limit: no oil at the edge, after: fill}`;
    const list = testList(jobOf(text, there('cover')), NOW);
    expect(list.map((i) => [i.test, i.pieces, i.listed])).toEqual([['idle', ['cover'], true]]);
  });

  it('a test of what lies over it stands for it too', () => {
    const text = `pieces: {carburettor: {}, float-bowl: {under: carburettor, joint: gasket}}
tasks: {leak: {test: Fuel on, limit: no smell and no drop, after: carburettor on}}`;
    const list = testList(jobOf(text, there('carburettor', 'float-bowl')), NOW);
    expect(list.map((i) => i.test)).toEqual(['leak']);
  });

  it('what the maker wants tightened again comes with its when', () => {
    const job = jobOf('bolts: {S: M8x30}\npieces: {head: {bolts: S, torque: 20 N·m}}', [
      ...boltsOff('head', 'S'),
      ...boltsOn('head', 'S'),
    ]);
    const bare = { torque: null, angle: null, after: null, printed: null };
    const passes = [
      { name: 'full', ...bare },
      { name: 'again', ...bare, after: '500 km' },
    ];
    const head = job.pieces.get('head');
    if (head) head.spec = { ...head.spec, passes };
    expect(short(testList(job, NOW))).toContainEqual([
      'head-again',
      'Head: tighten again, cold, 20 N·m.',
      'after 500 km',
      'later',
    ]);
  });
});

describe('tests of the file', () => {
  const TEXT = `
pieces: {cover: {}}
tasks:
  fill: {do: Fill, after: cover on}
  weep: {test: Idle, limit: no oil, after: fill}
  slack: {adjust: Chain slack, limit: 20..30 mm}
`;

  it('come first, with what was measured', () => {
    const lines = [{ task: 'slack', done: 'done', was: '41 mm', set: '25 mm' }];
    expect(testList(jobOf(TEXT, lines), NOW)).toMatchObject([
      { test: 'weep', state: 'waits', limit: 'no oil' },
      { test: 'slack', state: 'passed', was: '41 mm', set: '25 mm' },
    ]);
  });

  it('what is not tested is said, once its pieces are back', () => {
    const lines = [off('cover'), on('cover'), done('fill')];
    const all = testList(jobOf(TEXT, lines), NOW);
    expect(all.map((i) => [i.test, i.state])).toEqual([
      ['weep', 'due'],
      ['slack', 'due'],
    ]);
  });

  it.each([
    ['next day', '2026-05-01T20:00:00+02:00', '2026-05-02', 'due'],
    ['next day', '2026-05-02T08:00:00+02:00', '2026-05-03', 'later'],
    ['after 24 h', '2026-05-01T10:00:00+02:00', '2026-05-02T10:00:00+02:00', 'due'],
    ['after 24 h', '2026-05-01T10:00:01+02:00', '2026-05-02T10:00:01+02:00', 'later'],
    ['after 100 km', '2026-04-01T10:00:00+02:00', null, 'later'],
    ['at the next oil change', '2026-04-01T10:00:00+02:00', null, 'later'],
    ['hot', '2026-05-02T09:00:00+02:00', null, 'due'],
  ])('%s, back at %s: due %s, %s', (when, time, due, state) => {
    const text = 'pieces: {cover: {}}\ntasks: {weep: {test: Idle leak, after: cover on}}';
    const job = jobOf(text, [off('cover', time), on('cover', time)]);
    Object.assign(job.tasks.get('weep')?.spec ?? {}, { when: asPrinted(when) });
    expect(testList(job, NOW)[0]).toMatchObject({ when, due, state });
  });
});

describe('a test that failed opens another round', () => {
  const TEXT = `
bolts: {S: M6x25}
pieces: {lever: {}, cover: {under: lever, bolts: S, joint: new gasket}}
tasks: {weep: {test: Idle, limit: no oil, after: cover on}}
buy: {seal: {what: shaft seal, once: true, for: cover on}, tube: {what: sealant, for: cover on}}
`;
  const lines: Said[] = [
    off('lever'),
    ...boltsOff('cover', 'S'),
    { piece: 'cover', note: 'Old gasket torn at 3.' },
    { buy: 'seal', done: 'fitted' },
    ...boltsOn('cover', 'S'),
    on('lever'),
    { task: 'weep', done: 'failed', result: 'failed', says: 'drop at 3 after ten minutes' },
  ];

  it('says what comes off again, what was found, and what is wanted anew', () => {
    expect(roundAgain(jobOf(TEXT, lines), 'weep', NOW)).toEqual({
      first: [
        expect.stringMatching(/^Wipe it dry/),
        expect.stringMatching(/^Go round with the wrench, cold/),
      ],
      off: ['lever', 'cover'],
      found: [
        { at: NOW, piece: 'cover', hole: null, say: 'Old gasket torn at 3.' },
        { at: NOW, piece: null, hole: null, say: 'drop at 3 after ten minutes; failed' },
      ],
      anew: [
        { buy: 'seal', what: 'shaft seal', count: null },
        { buy: 'cover-gasket', what: 'gasket', count: null },
      ],
    });
  });

  it('has nothing to say of a test that there is not', () => {
    expect(roundAgain(jobOf(TEXT, lines), 'wep', NOW)).toBeNull();
  });
});
