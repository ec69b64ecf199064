/** What stops says how many, where, since when, and the way out; and what only has to be told before the first start. */
import { describe, expect, it } from 'vitest';
import { gate } from '../../../src/plan/gates/gate.ts';
import type { GateItem, Moment } from '../../../src/plan/gates/items.ts';
import { boltsOff, boltsOn, done, jobOf, off, on, type Said } from '../make.ts';

const TEXT = `
bolts: {S: M6x25, M: M6x35}
pieces:
  cover: {name: Left cover, bolts: S S M, joint: new gasket}
  caliper: {care: brake}
tasks:
  drain: {do: Drain the oil, before: cover off}
  fill: {do: Fill with oil, after: cover on}
  play: {adjust: Lever play, limit: 2..4 mm, after: cover on}
  hot: {adjust: Idle, when: hot, after: cover on}
  plug: {do: Fit the new spark plug}
  scrape: {do: Scrape both faces, while: cover off}
  run: {test: Five minutes at idle, after: fill}
  top: {do: Top up the oil, after: run}
`;
const EARLY = '2026-04-11T18:00:00+02:00';
const NOW = '2026-05-02T10:00:00+02:00';
const away = boltsOff('cover', 'S S M', EARLY);

const items = (moment: Moment, lines: readonly Said[], text = TEXT): Record<string, GateItem> =>
  Object.fromEntries(
    gate(jobOf(text, lines), moment, moment === 'start' ? null : 'cover', NOW).items.map((i) => [
      i.key,
      i,
    ]),
  );

describe('what stops says why, since when and the way out', () => {
  it('bolts that are in before prying, with what is wrong with them', () => {
    const lines: Said[] = [
      { piece: 'cover', out: 'S ! !', at: EARLY },
      { piece: 'cover', hole: ['3'], state: 'stuck', says: 'soaking, heat tomorrow', at: EARLY },
    ];
    expect(items('prying', lines).bolts).toMatchObject({
      stop: '2 is still in. 3 is still in: stuck since 11 April (soaking, heat tomorrow). Get them out before you pry.',
      way: { to: 'bolts', piece: 'cover' },
    });
  });

  it('what is inside, and how many of how many', () => {
    const lines: Said[] = [...away, { piece: 'cover', inside: '3 rags', at: EARLY }];
    expect(items('closing', lines)['inside-cover-rag']).toMatchObject({
      stop: '3 rags went in through the opening under Left cover on 11 April: take them out.',
      way: { to: 'out', piece: 'cover', what: 'rag', count: 3 },
    });
    const two = [...lines, { piece: 'cover', cleared: 'rag' }];
    expect(items('closing', two)['inside-cover-rag']?.stop).toBe(
      '2 of the 3 rags that went in through the opening under Left cover on 11 April are still inside: take them out.',
    );
    const none = [...two, { piece: 'cover', cleared: 'all' }];
    expect(items('closing', none)['inside-cover-rag']).toMatchObject({ done: true });
  });

  it('where it went in, as somebody said then', () => {
    const lines: Said[] = [
      ...away,
      { piece: 'cover', inside: 'rag', says: 'in the oil way', at: EARLY },
    ];
    expect(items('closing', lines)['inside-cover-rag']?.stop).toBe(
      '1 rag went in through the opening under Left cover (in the oil way) on 11 April: take it out.',
    );
  });

  it('what is to be settled or mended before the joint', () => {
    const lines: Said[] = [
      ...boltsOff('cover', 'M S M', EARLY),
      { piece: 'cover', hole: ['2'], state: 'pulled', says: 'insert M6 x 9', at: EARLY },
    ];
    const { settled, threads } = items('sealing', lines);
    expect(settled).toMatchObject({
      stop: '1: the file says S, M came out. Settle which is true before anything goes in.',
      way: { to: 'settle', piece: 'cover', hole: '1' },
    });
    expect(threads).toMatchObject({
      stop: '2 pulled since 11 April (insert M6 x 9). Mend it before the joint is made.',
      way: { to: 'mend', piece: 'cover', hole: '2' },
    });
  });

  it('before the first start: what is out, finger-tight or pulled', () => {
    const lines: Said[] = [
      done('drain', EARLY),
      ...away,
      { piece: 'cover', in: 'S S M', at: EARLY },
      { piece: 'cover', hole: ['3'], state: 'pulled', at: NOW },
    ];
    const found = items('start', lines);
    expect(found['fluid-drain']).toMatchObject({
      stop: 'The oil has been out since 11 April. Fill it in.',
      way: { to: 'task', task: 'fill' },
    });
    expect(found['tight-cover']).toMatchObject({
      stop: 'Left cover: 1, 2 and 3 have been only finger-tight since 11 April. Tighten them.',
      way: { to: 'tighten', piece: 'cover' },
    });
    expect(found['thread-cover']).toMatchObject({
      stop: 'Left cover: 3 pulled since 10:00. It holds nothing: mend it.',
      way: { to: 'mend', piece: 'cover', hole: '3' },
    });
  });

  it('bolts that have had some of their passes are not called finger-tight', () => {
    const lines: Said[] = [
      ...away,
      { piece: 'cover', in: 'S S M', at: EARLY },
      { piece: 'cover', tight: 'snug', hole: ['1', '2'], at: NOW },
    ];
    const passes = TEXT.replace('joint: new gasket', "passes: [snug, 'part 5 N·m', full]");
    const { say, stop } = items('start', lines, passes)['tight-cover'] ?? {};
    expect(say).toBe(
      'Left cover: 3 only finger-tight; 1 and 2 not tight, snug done, part and full not yet.',
    );
    expect(stop).toBe(
      'Left cover: 3 has been only finger-tight since 11 April. 1 and 2 are not tight: snug done, part and full not yet. Tighten them.',
    );
    const all: Said[] = [
      ...away,
      { piece: 'cover', in: 'S S M', at: EARLY },
      { piece: 'cover', tight: 'snug', at: NOW },
      { piece: 'cover', tight: 'part', at: NOW },
    ];
    expect(items('start', all, passes)['tight-cover']?.stop).toBe(
      'Left cover: 1, 2 and 3 are not tight: snug and part done, full not yet. Tighten them.',
    );
  });

  it('a brake is ticked by itself', () => {
    expect(items('start', [off('caliper'), on('caliper')])['brake-caliper']).toMatchObject({
      stops: true,
      done: false,
      way: { to: 'tick' },
    });
  });

  it('only what stops has a way out', () => {
    const all = Object.values(items('start', [done('drain'), ...away]));
    for (const item of all) {
      expect(item.way === null, item.key).toBe(!item.stops);
      expect(item.stop === null, item.key).toBe(!item.stops);
    }
  });
});

describe('before the first start', () => {
  const shut = [...away, ...boltsOn('cover', 'S S M')];

  it('oil that is to be filled in stops, though nobody noted that it was let out', () => {
    expect(items('start', shut)['fill-fill']).toMatchObject({
      stop: 'Not noted as done: Fill with oil. Do it, and say so.',
      done: false,
      way: { to: 'task', task: 'fill' },
    });
    expect(items('start', [...shut, done('fill')])['fill-fill']).toBeUndefined();
    // With its drain noted, the one item tells both.
    const drained = items('start', [done('drain'), ...shut]);
    expect([drained['fluid-drain']?.done, drained['fill-fill']]).toEqual([false, undefined]);
  });

  it('what else is to be filled in is loud and let through', () => {
    const text = 'tasks: {fill: {do: Fill the washer bottle}}\npieces: {cover: {}}';
    expect(items('start', [off('cover'), on('cover')], text)['fill-fill']).toMatchObject({
      stops: false,
      loud: true,
    });
  });

  it('names controls that are not set and work that is not done, but not what comes hot or after a test', () => {
    const found = items('start', shut);
    expect(found['adjust-play']?.say).toBe('Not adjusted yet: Lever play (2..4 mm).');
    expect(found['task-plug']?.say).toBe('Still to do: Fit the new spark plug.');
    const keys = Object.keys(found);
    for (const key of ['adjust-hot', 'fill-top', 'task-top', 'task-scrape'])
      expect(keys).not.toContain(key);
    const later = items('start', [...shut, done('play'), done('plug')]);
    expect([later['adjust-play'], later['task-plug']]).toEqual([undefined, undefined]);
  });

  it('names holes in which nothing holds', () => {
    const lines: Said[] = [
      ...away,
      { piece: 'cover', hole: ['1', '2'], in: 'S' },
      { piece: 'cover', tight: 'snug', hole: ['1', '2'] },
      { piece: 'cover', tight: 'full', hole: ['1', '2'] },
    ];
    expect(items('start', lines)['part-back-cover']).toMatchObject({
      say: 'Left cover: no bolt in 3.',
      loud: true,
      stops: false,
    });
    const sheared = [...lines, { piece: 'cover', hole: ['3'], state: 'sheared', at: EARLY }];
    expect(items('start', sheared)['trouble-cover']).toMatchObject({
      say: 'Left cover: 3 sheared since 11 April.',
      loud: true,
      stops: false,
    });
  });

  it('what can hurt is loud, and all of it is asked', () => {
    const found = items('start', [...shut, done('fill')]);
    expect(['air', 'stand', 'near'].map((key) => found[key]?.loud)).toEqual([true, true, true]);
    expect(found.levels?.loud).toBe(false);
  });
});
