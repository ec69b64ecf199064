import { describe, expect, it } from 'vitest';
import { measured } from '../../../src/plan/trace/clock.ts';
import { moneyIn } from '../../../src/plan/trace/money.ts';
import { adviceLine, adviceSaid, figuresSaid } from '../../../src/plan/trace/weigh-say.ts';
import { weighedOf } from '../../../src/plan/trace/weighed.ts';
import { jobOf, off, on, type Said } from '../make.ts';

/** An invented cover with a shaft seal behind it; prices and times are invented too. */
const COVER = `
pieces:
  lever: {takes: 5 min}
  cover: {under: lever, takes: 30 min}
tasks:
  seal: {decide: Renew the shaft seal?, while: cover off, now: {price: 12.50, takes: 40 min}, chance: 1 in 6}
buy:
  gasket: {what: cover gasket, price: 14.20, once: true, for: cover on}
  washer: {what: copper washer, price: 0.50, count: 2, once: true, for: cover}
  oil: {what: oil, price: 20, for: cover on}
`;
const of = (text = COVER, hour: number | null = null, lines: Said[] = [], key = 'seal') =>
  weighedOf(jobOf(text, lines), key, hour)!;

describe('what it costs later', () => {
  it('is the same again, the way here and back, and what is used once', () => {
    const { later, again } = of();
    // The seal, the gasket and two washers; 40 min, and 5 + 30 off and on again.
    expect(later).toEqual({ price: 12.5 + 14.2 + 1, takes: 40 + 70 });
    expect(again).toMatchObject({ pieces: ['lever', 'cover'], untimed: [], measured: false });
    expect(again?.once.map(({ buy }) => buy)).toEqual(['gasket', 'washer']);
  });

  it('counts the whole way though the cover is off now', () => {
    expect(of(COVER, null, [off('lever'), off('cover')]).later).toEqual(of().later);
  });

  it('is what the file says where it says it', () => {
    const own = of(COVER.replace('chance:', 'later: {price: 40, takes: 3 h}, chance:'));
    expect(own.later).toEqual({ price: 40, takes: 180 });
    expect(own.again).toBe(null);
  });

  it('takes the times of the diary where the file has none, breaks of more than an hour left out', () => {
    const bare = COVER.replace('{under: lever, takes: 30 min}', '{under: lever}');
    const lines: Said[] = [
      off('lever', '2026-05-02T10:00:00+02:00'),
      { at: '2026-05-02T10:20:00+02:00', piece: 'cover', note: 'a bolt is stuck' },
      { at: '2026-05-02T13:00:00+02:00', note: 'back again' },
      off('cover', '2026-05-02T13:25:00+02:00'),
    ];
    const { again, later } = of(bare, null, lines);
    expect(again).toMatchObject({ takes: 10 + 45, measured: true, untimed: ['cover on'] });
    expect(later.takes).toBe(40 + 55);
    const back = [...lines, on('cover', '2026-05-02T13:45:00+02:00')];
    expect(of(bare, null, back).again).toMatchObject({ takes: 10 + 45 + 20, untimed: [] });
    const said = figuresSaid(jobOf(bare, lines), of(bare, null, lines)).map(({ say }) => say);
    expect(said).toContain('no time is known for Cover on: not counted');
  });

  it('a photograph, a kept note or a choice amid the work takes nothing from its time', () => {
    const at = (minute: number) => `2026-05-02T10:${minute}:00+02:00`;
    const amid: Said[] = [
      { at: at(12), piece: 'cover', photo: 'photos/p1.jpg' },
      { at: at(15), piece: 'cover', note: 'a bolt is stuck' },
      { at: at(16), keep: 'idOfNote' },
      { at: at(20), piece: 'cover', chosen: 'renew shaft seal' },
      { at: at(22), task: 'seal', figured: 'chance 1 in 6' },
    ];
    const ends = [off('lever', at(10)), off('cover', at(40))] as const;
    const job = jobOf(COVER, [ends[0], ...amid, ends[1]]);
    expect(measured(job).get('cover')).toEqual({ off: 30, on: null });
    const done: Said = { at: at(30), task: 'seal', done: 'yes' };
    const other = jobOf(COVER, [ends[0], ...amid, done, ends[1]]);
    expect(measured(other).get('cover')).toEqual({ off: 10, on: null });
  });

  it('times of the clock are those of the last round', () => {
    const lines: Said[] = [
      off('lever', '2026-05-02T10:00:00+02:00'),
      off('cover', '2026-05-02T10:50:00+02:00'),
      on('cover', '2026-05-02T11:00:00+02:00'),
      off('cover', '2026-05-02T11:10:00+02:00'),
    ];
    expect(measured(jobOf(COVER, lines)).get('cover')).toEqual({ off: 10, on: 10 });
  });
});

describe('what it turns on', () => {
  it('is said in words, by money and time as far as known, and never the one for the other', () => {
    // 12.50 / 27.70 by money, 40 / 110 by time: said 1 in 6, both say leave it.
    const { weighed } = of();
    expect(weighed.turning.money).toBeCloseTo(12.5 / 27.7, 9);
    expect(weighed.turning.time).toBeCloseTo(40 / 110, 9);
    expect(weighed).toMatchObject({ advice: 'leave', by: 'both' });
    expect(adviceSaid(of())[0]).toBe(
      'Worth it if it would fail more often than 3 times in 8 before you are in here anyway; you said 1 in 6: leave it.',
    );
    expect(adviceLine(of())).toBe('leave it, it turns at 3 times in 8');
  });

  it('turns round with what touching it may break', () => {
    const text = COVER.replace(
      'chance: 1 in 6',
      'chance: 5 in 6, harm: {chance: 1 in 20, price: 60}',
    );
    const said = adviceSaid(of(text, 20));
    expect(said[0]).toContain('you said 5 in 6: renew it.');
    expect(said[1]).toMatch(
      /^It turns round if touching it went wrong more often than \d+ times? in/,
    );
  });

  it('says what is not known and would matter most', () => {
    const bare = of('tasks: {seal: {decide: Renew the seal?, now: 12.50, later: 40}}');
    expect(adviceSaid(bare)).toEqual([
      'Worth it if it would fail more often than 3 times in 10 before you are in here anyway.',
      'Not known, and it matters most: how likely it is to fail.',
    ]);
    expect(bare.weighed.advice).toBe(null);
  });

  it('advises nothing while a price, a time or a chance of harm was not read, and says which', () => {
    const file = (now: string, more = '') =>
      of(
        `tasks: {seal: {decide: Renew the seal?, now: ${now}, later: {price: 30, takes: 3 h}${more}}}`,
      );
    const price = file('{price: "1.234,50", takes: 20 min}', ', chance: 1 in 6');
    expect(adviceSaid(price)).toEqual([
      'Not read: the price now “1.234,50”. Until that is written as a figure nothing is advised.',
    ]);
    expect(price.weighed).toMatchObject({ advice: null, turning: { chance: null, time: null } });
    const takes = file('{price: 5, takes: a while}', ', chance: 1 in 6');
    expect(takes.unread).toEqual([{ figure: 'now.takes', text: 'a while' }]);
    const harm = file('{price: 5}', ', chance: 1 in 2, harm: {chance: some day, price: 60}');
    expect(harm.weighed.advice).toBe(null);
    const chance = file('{price: 5}', ', chance: "1:6"');
    expect(adviceSaid(chance)[0]).toContain('Not read: the chance “1:6”.');
  });

  it('is nothing that can be said where nothing is known', () => {
    const bare = of('tasks: {seal: {decide: Renew the seal?}}');
    expect(adviceSaid(bare)[0]).toBe('What it turns on cannot be said yet.');
  });
});

describe('what keeps somebody alive', () => {
  const ask = (decide: string, more = '') =>
    of(`pieces: {caliper: {care: brake}, tank: {care: fuel}, cover: {under: tank}}
tasks: {seal: {decide: "${decide}", now: 12.50, later: 40, chance: rarely${more}}}`);

  it.each([
    ['Renew the brake hose?', ''],
    ['Renew the steering head bearings?', ''],
    ['Renew the fuel line?', ''],
    ['Renew the frame bolts?', ''],
    ['Renew the hydraulics hose?', ''],
    ['Renew the pads?', ', while: caliper off'],
  ])('%s is renewed by the manual, and no figure stands there', (decide, more) => {
    const found = ask(decide, more);
    expect(found.weighed).toMatchObject({ advice: 'renew', by: 'safety', said: null });
    expect(found.weighed.turning.chance).toBe(null);
    expect(adviceSaid(found).join(' ')).not.toMatch(/\d/);
    expect(adviceSaid(found)[0]).toContain("renew it as the maker's manual says");
  });

  it('a piece that only lies over it makes it none', () => {
    expect(ask('Renew the gasket?', ', while: [tank off, cover off]').safety).toEqual([]);
  });
});

it.each([
  ['12.50', 12.5],
  ['12,50 €', 12.5],
  ['£ 8', 8],
  ['about 60', 60],
  ['1 200', 1200],
  ['12 or 14', null],
  ['free', null],
  ['', null],
])('%s is a price', (text, price) => expect(moneyIn(text)).toBe(price));
