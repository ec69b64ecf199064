import { describe, expect, it } from 'vitest';
import type { Place } from '../../../src/bolt/fit/reach.ts';
import { repair } from '../../../src/bolt/fit/repair.ts';
import { readKind } from '../../../src/bolt/read/kind.ts';
import { type Given, placeOf } from '../holes.ts';

const pulled = (hole: Given = {}, into = 'cast aluminium', text = 'M6x25 flange, 8 mm'): Place =>
  placeOf(readKind('S', text), hole, [], into);
const list = (place: Place, edge: number | null = null) => repair({ place, edge });
const find = (place: Place, words: RegExp, edge: number | null = null) =>
  list(place, edge).find((s) => words.test(s.do));

describe('a pulled thread', () => {
  it('is mended in the order of the trade', () => {
    expect(list(pulled(), 8).map((s) => s.do.split(/[:,.?]/)[0])).toEqual([
      'Brakes',
      'Probe the hole',
      'Shut every opening with rag',
      'Wall left beside an insert',
      'Wire insert for M6x1',
      'Tap with the tap of the insert',
      'Chips out with grease on the drill and a pick',
      'Turn the insert in until it lies a quarter to half a turn below the face',
      'Break its tang off',
      'No wall or no hold for a wire insert',
      'Count the rags out',
    ]);
  });

  it('deeper thread is named with the bolt that reaches it, where it was probed', () => {
    const deep = pulled({ thick: 8, thread: { from: 0, to: 30 } });
    expect(find(deep, /longer bolt/)).toEqual({
      do: 'Try a longer bolt: M6x35 flange, 8 mm.',
      why: '13 mm of thread lies below the pulled turns. Probe it first, and turn the bolt in by fingers: it must not bottom.',
    });
    const shallow = pulled({ thick: 8, thread: { from: 0, to: 19 } });
    expect(find(shallow, /longer bolt/)?.why).toBe(
      'Only 2 mm of thread lies below the pulled turns.',
    );
    const inch = pulled({ thick: 8, thread: { from: 0, to: 40 } }, 'iron', '1/4-20 x 1 hex');
    expect(find(inch, /longer bolt/)?.do).toBe('Try a longer bolt: 1/4-20 x 1-3/4 hex.');
  });

  it('an insert has its own drill, and a length by the metal', () => {
    expect(find(pulled(), /Wire insert/)?.do).toBe(
      'Wire insert for M6x1, 1.5 d long (9 mm): drill 6.3 mm, square, 13 mm deep.',
    );
    expect(find(pulled({}, 'iron'), /Wire insert/)?.do).toContain('1 d long (6 mm)');
  });

  it('too thin a wall is said, and where nobody measured it is asked for', () => {
    expect(find(pulled(), /Wall left/, 8)?.do).toBe('Wall left beside an insert: 4.35 mm, enough.');
    expect(find(pulled(), /Wall left/, 6)?.do).toBe(
      'Wall left beside an insert: 2.35 mm, too little.',
    );
    expect(find(pulled(), /nearest edge/)).toBeDefined();
  });

  it('a magnet is offered where it works', () => {
    expect(find(pulled(), /Chips/)?.do).toContain('no magnet holds them');
    expect(find(pulled({}, 'cast iron'), /Chips/)?.do).toContain('a magnet');
  });

  it('nothing is listed for a thread that it has no figures for', () => {
    expect(list(pulled({}, 'iron', '2BA x 1/2'))).toEqual([]);
    expect(repair({ place: { takes: null, hole: null, piece: null } })).toEqual([]);
  });
});
