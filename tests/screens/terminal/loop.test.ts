import { describe, expect, it } from 'vitest';
import type { Effect, Happening } from '../../../src/screens/base/state.ts';
import { createLoop, type Hands } from '../../../src/screens/terminal/loop.ts';

const press = (key: string): Happening => ({ on: 'press', press: key });
const wish = { do: 'note', text: 'x' } as const;
const recorded: Happening = {
  on: 'recorded',
  file: 'f',
  wish,
  result: { ok: false, unsaved: { code: 'x', say: '', fix: '' } },
};

const ASKS: Readonly<Record<string, Effect>> = {
  m: { do: 'record', file: 'f', wish },
  o: { do: 'open', file: 'f' },
  l: { do: 'list', folder: 'd' },
  c: { do: 'milestone', file: 'f', piece: 'p', place: 'off' },
  r: { do: 'ring' },
  q: { do: 'quit' },
};

/** The state is all that happened; each letter of ASKS asks for its effect. */
function update(state: string, h: Happening): { state: string; effects: Effect[] } {
  if (h.on === 'size') return { state, effects: [] };
  if (h.on !== 'press') return { state: `${state} ${h.on}`, effects: [] };
  if (h.press === 'X') throw new Error('broke');
  const asked = ASKS[h.press];
  return { state: `${state}${h.press}`, effects: asked ? [asked] : [] };
}

/** Hands whose work a test lets finish, in any order. */
function slowHands() {
  const begun: string[] = [];
  const finish: Record<string, (how: Promise<never> | null) => void> = {};
  const slow = (name: string, answer: Happening) => () => {
    begun.push(name);
    return new Promise<Happening>((done) => {
      finish[name] = (how) => done(how ?? answer);
    });
  };
  const hands: Hands = {
    record: slow('record', recorded),
    open: slow('open', { on: 'file', file: 'f', read: { ok: false, faults: [] } }),
    start: slow('start', { on: 'quiet', say: '' }),
    list: slow('list', { on: 'bench', jobs: [] }),
    earlier: async () => null,
    find: async () => null,
    due: async () => null,
    milestone: slow('milestone', { on: 'quiet', say: '' }),
    print: slow('print', { on: 'quiet', say: 'Page: f.html' }),
    show: slow('show', { on: 'quiet', say: 'Opened' }),
    ring: () => begun.push('ring'),
    soon: setImmediate,
  };
  return { hands, begun, finish };
}

/** All promises that can go on have gone on. */
const settled = () => new Promise<void>((done) => setImmediate(done));

const open = (effects: Effect[] = []) => {
  const slow = slowHands();
  return { ...slow, loop: createLoop({ first: '', effects, update }, slow.hands) };
};

describe('what happens', () => {
  it('goes through update one by one, with one drawing for what came at once', () => {
    const { loop } = open();
    let drawn = 0;
    const stop = loop.subscribe(() => drawn++);
    loop.happen(...Array.from('x'.repeat(200), press));
    expect({ state: loop.state(), drawn }).toEqual({ state: 'x'.repeat(200), drawn: 1 });
    loop.happen({ on: 'size', columns: 1, rows: 1 });
    expect(drawn, 'nothing changed').toBe(1);
    stop();
    loop.happen(press('y'));
    expect(drawn, 'no longer asked').toBe(1);
  });
});

describe('what is asked for', () => {
  it('and answered at once is one drawing with the key that asked; a slow disk shows the key first', async () => {
    const { loop, finish } = open();
    const drawn: string[] = [];
    loop.subscribe(() => drawn.push(loop.state()));
    loop.happen(press('m'));
    await Promise.resolve();
    finish.record?.(null);
    await settled();
    expect(drawn).toEqual(['m recorded']);
    loop.happen(press('o'));
    await settled();
    expect(drawn).toEqual(['m recorded', 'm recordedo']);
    finish.open?.(null);
    await settled();
    expect(drawn.at(-1)).toBe('m recordedo file');
  });

  it('is carried out in order, each after the answer to the one before', async () => {
    const { loop, begun, finish } = open([{ do: 'open', file: 'f' }]);
    loop.happen(press('m'), press('l'), press('r'));
    await settled();
    expect(begun, 'the bell waits for nothing').toEqual(['ring', 'open']);
    finish.open?.(null);
    await settled();
    expect(begun).toEqual(['ring', 'open', 'record']);
    finish.record?.(null);
    await settled();
    expect(begun).toEqual(['ring', 'open', 'record', 'list']);
    expect(loop.state()).toBe('mlr file recorded');
  });

  it('a commit waits for the mark before it, and no mark waits for a commit', async () => {
    const { loop, begun, finish } = open();
    loop.happen(press('m'), press('c'), press('o'));
    await settled();
    expect(begun).toEqual(['record']);
    finish.record?.(null);
    await settled();
    expect(begun).toEqual(['record', 'open', 'milestone']);
  });
});

describe('the end', () => {
  it('comes at once where nothing is on its way', async () => {
    const { loop } = open();
    loop.happen(press('q'));
    expect(await loop.ended).toBe(true);
  });

  it('waits for the mark, for the commit behind it, and takes no more keys', async () => {
    const { loop, finish } = open();
    let over = false;
    loop.ended.then(() => {
      over = true;
    });
    loop.happen(press('m'), press('c'), press('q'), press('x'));
    await settled();
    finish.record?.(null);
    await settled();
    expect(over).toBe(false);
    finish.milestone?.(null);
    expect(await loop.ended).toBe(true);
    expect(loop.state()).toBe('mcq recorded quiet');
  });

  it('asked for twice, waits for nothing and says that something was left', async () => {
    const { loop } = open();
    loop.happen(press('m'));
    loop.quit();
    loop.quit();
    expect(await loop.ended).toBe(false);
  });

  it('comes by a fault in update, and nothing more happens', async () => {
    const { loop, begun } = open();
    loop.happen(press('a'), press('X'), press('b'));
    await expect(loop.ended).rejects.toThrow('broke');
    loop.happen(press('m'));
    await settled();
    expect({ state: loop.state(), begun }).toEqual({ state: 'a', begun: [] });
  });

  it('comes by a fault in the hands, and what was asked behind it is not begun', async () => {
    const { loop, begun, finish } = open();
    loop.happen(press('m'), press('o'));
    await settled();
    finish.record?.(Promise.reject(new Error('the disk is odd')));
    await expect(loop.ended).rejects.toThrow('the disk is odd');
    await settled();
    expect(begun).toEqual(['record']);
  });
});
