import { describe, expect, it } from 'vitest';
import { backAfter } from '../../../src/plan/next/back.ts';
import { boltsOff, boltsOn, done, jobOf, NOW, off, on, type Said } from '../make.ts';

const TEXT = `
bolts: {S: M6x25, M: M6x35}
pieces:
  gear-lever: {}
  hose: {}
  cover: {name: Left cover, under: [gear-lever, hose], bolts: S S M, joint: gasket}
tasks:
  drain: {do: Drain the oil, before: cover off}
  scrape: {do: Scrape both faces, while: cover off}
  soak: {wait: "48 h, soaking", while: cover off}
  fill: {do: Fill with oil, after: cover on}
buy:
  gasket: {what: cover gasket, once: true, for: cover on}
  insert: {what: wire insert M6, for: cover on}
`;
const LONG_AGO = '2026-04-11T18:00:00+02:00';
const note = (lines: Said[], now = NOW) => backAfter(jobOf(TEXT, lines), now);

describe('coming back after days', () => {
  const lines: Said[] = [
    off('gear-lever', LONG_AGO),
    { at: LONG_AGO, piece: 'hose', removed: 'aside' },
    done('drain', LONG_AGO),
    { at: LONG_AGO, piece: 'cover', out: 'S S M' },
    { at: LONG_AGO, piece: 'cover', removed: 'all', tray: 'cup 2' },
    { at: LONG_AGO, piece: 'cover', inside: '1 rag' },
    { at: LONG_AGO, piece: 'cover', hole: ['2'], state: 'pulled', says: 'insert not fitted' },
    { at: LONG_AGO, buy: 'gasket', done: 'ordered', promised: '2026-04-25' },
    { at: LONG_AGO, buy: 'insert', done: 'here', tray: 'shelf' },
  ];

  it('says how long ago it was, and what is off and where its bolts are', () => {
    const { days, last, off: away } = note(lines);
    expect({ days, last }).toEqual({ days: 21, last: LONG_AGO });
    expect(away).toEqual([
      { piece: 'gear-lever', name: 'Gear lever', tray: null, aside: false, since: LONG_AGO },
      { piece: 'hose', name: 'Hose', tray: null, aside: true, since: LONG_AGO },
      { piece: 'cover', name: 'Left cover', tray: 'cup 2', aside: false, since: LONG_AGO },
    ]);
  });

  it('lists what is off as it came off', () => {
    expect(note([off('hose'), off('gear-lever')]).off.map((p) => p.piece)).toEqual([
      'hose',
      'gear-lever',
    ]);
  });

  it('says what is inside, in trouble, awaited and here', () => {
    const now = note(lines);
    expect(now.inside).toMatchObject([{ piece: 'cover', what: 'rag', count: 1, since: LONG_AGO }]);
    expect(now.trouble).toEqual([
      {
        piece: 'cover',
        name: 'Left cover',
        hole: '2',
        trouble: 'pulled',
        since: LONG_AGO,
        says: 'insert not fitted',
      },
    ]);
    expect(now.awaited).toEqual([
      {
        buy: 'gasket',
        what: 'cover gasket',
        state: 'ordered',
        promised: '2026-04-25',
        late: true,
        holds: ['cover on'],
        without: false,
      },
    ]);
    expect(now.here).toEqual([{ buy: 'insert', what: 'wire insert M6', tray: 'shelf' }]);
  });

  it('says what must not be done, with why', () => {
    expect(note(lines).dont).toEqual([
      "Don't run it: the oil is out, 1 rag is inside (Left cover) and a thread is pulled in Left cover.",
    ]);
    expect(note([]).dont).toEqual([]);
    expect(
      note([
        done('drain'),
        ...boltsOff('cover', 'S S M'),
        ...boltsOn('cover', 'S S M'),
        done('fill'),
      ]).dont,
    ).toEqual([]);
  });

  it('says what can be done in the next twenty minutes', () => {
    expect(note(lines).next).toEqual({
      minutes: 20,
      can: [],
      maybe: [
        { step: 'scrape', say: 'Scrape both faces.', minutes: null, partly: false, leave: null },
      ],
    });
  });

  it('says what is half out and what waits', () => {
    const half = note([{ at: NOW, piece: 'cover', out: 'S ! M', tray: 'cup 1' }]);
    expect(half.half).toEqual([
      { piece: 'cover', name: 'Left cover', out: 2, of: 3, tray: 'cup 1' },
    ]);
    const soaking = note(lines, '2026-04-12T18:00:00+02:00');
    expect(soaking.waits).toEqual([
      { step: 'soak', say: '48 h, soaking', until: '2026-04-13T18:00:00+02:00' },
    ]);
    expect(note(lines).waits).toEqual([]);
  });

  it('shouts about what is only finger-tight', () => {
    const loose: Said[] = [...boltsOff('cover', 'S S M'), { piece: 'cover', in: 'S S M' }];
    const now = note(loose);
    expect(now.fingerTight).toEqual([
      { piece: 'cover', name: 'Left cover', holes: ['1', '2', '3'] },
    ]);
    expect(now.dont).toEqual(["Don't run it: Left cover is only finger-tight."]);
  });

  it('shows conflicts and tests that are due', () => {
    const both: Said[] = [
      ...boltsOff('cover', 'S S M'),
      { piece: 'cover', hole: ['1'], in: 'S' },
      { piece: 'cover', hole: ['1'], in: 'M' },
    ];
    expect(note(both).conflicts).toMatchObject([{ piece: 'cover', hole: '1' }]);
    const back = [...boltsOff('cover', 'S S M'), ...boltsOn('cover', 'S S M')];
    expect(note(back).due.map((t) => t.test)).toEqual(['cover-weeps']);
  });

  it('has nothing to tell of an empty job', () => {
    expect(backAfter(jobOf(''), NOW)).toMatchObject({ days: null, last: null, off: [], dont: [] });
  });

  it('warns of what stops, steers and carries', () => {
    const text = 'pieces: {brake-caliper: {care: brake}, engine-bolt: {care: structure}}';
    const away = [off('brake-caliper'), off('engine-bolt')];
    expect(backAfter(jobOf(text, away), NOW).dont).toEqual([
      "Don't move it under its own weight: Brake caliper undone.",
      "Don't touch the brake's lever or pedal: Brake caliper off.",
      "Don't take it off its stand: Engine bolt undone.",
    ]);
    const back = [...away, on('brake-caliper'), on('engine-bolt')];
    expect(backAfter(jobOf(text, back), NOW).dont).toEqual([]);
  });
});
