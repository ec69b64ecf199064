import { describe, expect, it } from 'vitest';
import { buyList, newBuy } from '../../../src/plan/buy/list.ts';
import { boltsOff, boltsOn, jobOf, NOW, off, on, type Said } from '../make.ts';

const COVER = `
pieces: {cover: {}}
buy:
  gasket: {what: HL-1142 cover gasket, price: 14.20, count: 1, from: "Ostrell Parts", once: true, for: cover on}
`;
const bought = (state: string, more: Said = {}): Said => ({ buy: 'gasket', done: state, ...more });
const first = (lines: Said[], now = NOW) => buyList(jobOf(COVER, lines), now)[0];

describe('the list of the file', () => {
  it('says all of it', () => {
    expect(first([])).toEqual({
      buy: 'gasket',
      what: 'HL-1142 cover gasket',
      count: '1',
      price: '14.20',
      from: 'Ostrell Parts',
      once: true,
      for: ['cover on'],
      before: [],
      state: 'wanted',
      at: null,
      promised: null,
      tray: null,
      says: null,
      holds: ['cover on'],
      late: false,
      wentIn: false,
      why: null,
      ask: false,
    });
  });

  it('goes from ordered with its promise to fitted', () => {
    const ordered = bought('ordered', { promised: '2026-05-09', says: 'order 5512' });
    expect(first([ordered])).toMatchObject({
      state: 'ordered',
      promised: '2026-05-09',
      says: 'order 5512',
      holds: ['cover on'],
    });
    const here = bought('here', { tray: 'shelf' });
    expect(first([ordered, here])).toMatchObject({
      state: 'here',
      promised: null,
      tray: 'shelf',
      holds: [],
    });
    expect(first([ordered, here, bought('compared')])).toMatchObject({
      state: 'compared',
      holds: [],
    });
    expect(first([ordered, here, bought('fitted')])).toMatchObject({ state: 'fitted', holds: [] });
  });

  it('is here, and not noted as fitted, once its piece is back', () => {
    const back = [off('cover'), bought('here'), on('cover')];
    expect(first(back)).toMatchObject({ state: 'here', wentIn: true, holds: [] });
    expect(first([...back, bought('fitted')])).toMatchObject({ state: 'fitted', wentIn: true });
  });

  it('stays wanted, and holds nothing, when the piece went on without it', () => {
    expect(first([off('cover'), on('cover')])).toMatchObject({ state: 'wanted', holds: [] });
  });

  it.each([
    ['wrong', 'for the other side'],
    ['short', 'one of two came'],
    ['superseded', 'now HL-1142-B'],
  ])('%s holds its piece again, and says why', (state, says) => {
    const lines = [bought('ordered', { promised: '2026-05-09' }), bought(state, { says })];
    expect(first(lines)).toMatchObject({ state, says, holds: ['cover on'] });
  });

  it('is late on the day after the promise', () => {
    const lines = [bought('ordered', { promised: '2026-05-09' })];
    expect(first(lines, '2026-05-09T23:59:59+02:00')?.late).toBe(false);
    expect(first(lines, '2026-05-10T00:00:00+02:00')?.late).toBe(true);
  });

  it('takes an undone mark back', () => {
    expect(first([bought('here'), { undo: 'i0000000' }])?.state).toBe('wanted');
  });

  it('takes a piece as such for its going on, a task for the task', () => {
    const text = `pieces: {cover: {}}
tasks: {fill: {do: Fill}}
buy: {bolt: {what: bolt, for: cover}, oil: {what: oil, for: fill}, tool: {what: puller, for: cover off}}`;
    expect(buyList(jobOf(text), NOW).map((b) => b.holds)).toEqual([
      ['cover on'],
      ['fill'],
      ['cover off'],
    ]);
  });
});

describe('a second round', () => {
  it('wants anew what was used once', () => {
    const once = [off('cover'), bought('here'), on('cover')];
    expect(first([...once, off('cover')])).toMatchObject({ state: 'wanted', holds: ['cover on'] });
  });

  it('keeps what is still on its way', () => {
    const lines = [
      off('cover'),
      bought('ordered', { promised: '2026-05-09' }),
      on('cover'),
      off('cover'),
    ];
    expect(first(lines)).toMatchObject({ state: 'ordered', promised: '2026-05-09' });
  });

  it('keeps what came after it was off again', () => {
    const lines = [off('cover'), bought('here'), on('cover'), off('cover'), bought('here')];
    expect(first(lines)).toMatchObject({ state: 'here', holds: [] });
  });

  it('keeps what is not used up', () => {
    const text = 'pieces: {cover: {}}\nbuy: {gasket: {what: clamp, for: cover on}}';
    const lines = [off('cover'), bought('here'), on('cover'), off('cover')];
    expect(buyList(jobOf(text, lines), NOW)[0]?.state).toBe('here');
  });
});

describe('what comes on the list by itself', () => {
  const TEXT = `
bolts:
  S: M6x25 flange, 8 mm
  T: M10x60 once, 14 mm
pieces:
  head: {bolts: T T T S+copper S+copper+clip, joint: "new gasket, dry; new O-ring at the oil way"}
  sump: {bolts: S S, joint: "sealant along the edge, open 10 min; no grease"}
  cap: {bolts: S, joint: "medium threadlocker, sealant at the split"}
`;
  const short = (text: string, lines: Said[] = []) =>
    buyList(jobOf(text, lines), NOW).map((b) => [b.buy, b.what, b.count, b.why]);

  it('bolts used once, sealing washers, what the joint wants new, and its tubes', () => {
    expect(short(TEXT)).toEqual([
      ['head-t', 'M10x60 once, 14 mm', '3', 'used once, comes off with Head'],
      ['head-copper', 'copper washer', '2', 'seals once, under a head of Head'],
      ['head-gasket', 'gasket', null, 'to be new, says the joint of Head'],
      ['head-o-ring', 'O-ring', null, 'to be new, says the joint of Head'],
      ['sealant', 'sealant', null, 'the joint of Sump, Cap takes it'],
      ['threadlocker-medium', 'threadlocker, medium strength', null, 'the joint of Cap takes it'],
    ]);
  });

  it('is not listed twice: what the file lists for the piece stands for it', () => {
    const listed = `${TEXT}buy:
  bolts: {what: "M10×60 head bolts", count: 3, for: head on}
  copper: {what: copper washers, for: head on}
  gasket: {what: HL-2001 head gasket, for: head}
  tube: {what: sealant, for: sump on}`;
    expect(short(listed).map(([key]) => key)).toEqual([
      'bolts',
      'copper',
      'gasket',
      'tube',
      'head-o-ring',
      'threadlocker-medium',
    ]);
  });

  it('only bolts known to be used once hold their piece up; what was read out of words does not', () => {
    const holding = buyList(jobOf(TEXT), NOW).filter((b) => b.holds.length > 0);
    expect(holding.map((b) => [b.buy, b.holds])).toEqual([['head-t', ['head on']]]);
  });

  it('goes into the file with what is known of it, so that the next round wants it anew', () => {
    const add = (key: string) => {
      const buy = buyList(jobOf(TEXT), NOW).find((b) => b.buy === key);
      return buy ? newBuy(buy) : undefined;
    };
    expect(add('head-t')).toEqual({
      what: 'M10x60 once, 14 mm',
      for: 'head on',
      once: true,
      count: '3',
    });
    expect(add('head-gasket')).toEqual({ what: 'gasket', for: 'head on', once: true });
    expect(add('sealant')).toEqual({ what: 'sealant', for: 'sump on' });
    const listed = buyList(
      jobOf('pieces: {cover: {}}\nbuy: {seal: {what: x, for: cover on}}'),
      NOW,
    );
    expect(listed.map(newBuy)).toEqual([null]);
  });

  it('can be marked like the rest, and goes when the piece is back', () => {
    const text = 'bolts: {T: M10x60 once}\npieces: {head: {bolts: T T}}';
    const away = boltsOff('head', 'T T');
    const here = { buy: 'head-t', done: 'here' };
    expect(buyList(jobOf(text, [...away, here]), NOW)[0]).toMatchObject({
      state: 'here',
      holds: [],
    });
    expect(buyList(jobOf(text, [...away, here, ...boltsOn('head', 'T T')]), NOW)).toEqual([]);
    const again = [...away, here, ...boltsOn('head', 'T T'), ...boltsOff('head', 'T T')];
    expect(buyList(jobOf(text, again), NOW)[0]).toMatchObject({
      state: 'wanted',
      holds: ['head on'],
    });
  });
});

describe('seals and gaskets that are only named', () => {
  const listed = (piece: string, lines: Said[] = []) =>
    buyList(
      jobOf(`bolts: {T: M10x60 once, S: M6x25}\npieces: {cover: {${piece}}}`, lines),
      NOW,
    ).map((b) => `${b.what}${b.ask ? '?' : ''}`);

  it.each<[string, string[]]>([
    ['joint: "gasket, dry"', ['gasket?']],
    ['joint: new gasket', ['gasket']],
    ['joint: "new gasket; O-ring at the pipe"', ['gasket', 'O-ring?']],
    ['joint: no gasket', []],
    ['joint: old gasket used again', []],
    ['joint: seal the joint with silicone', ['sealant']],
    ['joint: "shaft seal, lip inwards"', ['shaft seal?']],
    ['loose: [2 O-rings, 2 dowels]', ['O-ring?']],
    ['bolts: S+copper S', ['copper washer']],
    ['bolts: S+o-ring S', ['o-ring?']],
    ['bolts: S+sealing-washer S', ['sealing-washer']],
    ['name: Oil seal', ['oil seal?']],
    ['name: Seal carrier', []],
    ['bolts: T S', ['M10x60 once']],
  ])('%s: %j', (piece, what) => {
    expect(listed(piece)).toEqual(what);
  });

  it('hold nothing up, and say where they are named', () => {
    const [asked] = buyList(jobOf('pieces: {cover: {joint: "gasket, dry"}}'), NOW);
    expect(asked).toMatchObject({
      buy: 'cover-gasket',
      ask: true,
      once: true,
      holds: [],
      why: 'named by the joint of Cover: a new one, or does the old one do?',
    });
  });

  it('what was not bought stays on the list when its piece is back; questions and tubes do not', () => {
    const piece = 'bolts: T S+copper, joint: "new gasket, O-ring, sealant"';
    const back = [...boltsOff('cover', 'T S+copper'), ...boltsOn('cover', 'T S+copper')];
    expect(listed(piece, back)).toEqual(['M10x60 once', 'copper washer', 'gasket']);
    const text = `bolts: {T: M10x60 once, S: M6x25}\npieces: {cover: {${piece}}}`;
    const noted = [...back, { buy: 'cover-gasket', done: 'here' }];
    const list = buyList(jobOf(text, noted), NOW);
    expect(list.map((b) => b.buy)).toEqual(['cover-t', 'cover-copper']);
    expect(list[0]).toMatchObject({
      state: 'wanted',
      holds: [],
      why: 'used once, comes off with Cover; it is back, and no new one was noted',
    });
  });
});
