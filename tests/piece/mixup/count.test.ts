import { describe, expect, test } from 'vitest';
import type { HoleNow } from '../../../src/model/types.ts';
import { shouldHave } from '../../../src/piece/mixup/count.ts';
import { trayHoles } from '../../../src/piece/mixup/holes.ts';
import { mixup } from '../../../src/piece/mixup/mixup.ts';
import { hole, row, SML, tray } from './make.ts';

describe('before anything goes back', () => {
  test('how many of each should lie there, shortest first', () => {
    const empty = row('l s m s s m s s s m s');
    expect(shouldHave(empty, SML)).toEqual({
      counts: { S: 7, M: 3, L: 1 },
      total: 11,
      unknown: [],
      say: 'You should have 7 S (25 mm), 3 M (35 mm) and 1 L (55 mm), 11 bolts in all.',
    });
  });

  test('only empty holes count, and those that nobody has named are said', () => {
    const holes = [...row('s S M s'), hole('5', 'L', 'home'), hole('6', '?', 'out')];
    expect(shouldHave(holes, SML)).toMatchObject({
      counts: { S: 2 },
      unknown: ['6'],
      say: 'You should have 2 S (25 mm) and 1 more bolt, 3 bolts in all.',
    });
    expect(shouldHave(row('S M'), SML).say).toBeNull();
    expect(shouldHave(row('s'), SML).say).toBe('You should have 1 S (25 mm).');
  });
});

describe('the holes of a piece as its tray sees them', () => {
  const now = (name: string, claim: string, more: Partial<HoleNow> = {}): HoleNow => {
    const item = { kind: claim, with: [] };
    return {
      ...{ name, claim: item, found: null, belongs: item, unsettled: false, state: 'out' },
      ...{ holds: null, passes: [], trouble: null, conflict: null, by: null, ...more },
    };
  };

  test('what came out of a hole lies in the tray, whatever the file claims', () => {
    const holes = trayHoles([now('1', 'L', { found: { kind: 'S', with: [] } }), now('2', 'L')]);
    expect(shouldHave(holes, SML).counts).toEqual({ S: 1, L: 1 });
  });

  test('a hole that was found empty, or whose bolt broke off, has none in the tray', () => {
    const holes = trayHoles([
      now('1', 'S', { trouble: 'empty' }),
      now('2', 'S', { trouble: 'sheared' }),
      now('3', 'S', { trouble: 'pulled' }),
    ]);
    expect(holes.map((h) => h.name)).toEqual(['3']);
  });

  test('a wrong bolt that was put in with a reason, and a measured height, go along', () => {
    const wrong = now('4', 'S', { state: 'in', holds: { kind: 'M', with: [] } });
    const holes = trayHoles([wrong, now('5', 'M')], new Map([['4', 12.5]]));
    expect(holes[0]).toMatchObject({ holds: { kind: 'M' }, proud: 12.5, takes: { kind: 'S' } });
    const answer = mixup({ holes, left: tray('S'), kinds: SML });
    expect(answer.explanations[0]?.holes[0]).toMatchObject({
      takes: 'S',
      holds: 'M',
      among: ['4'],
    });
  });
});
