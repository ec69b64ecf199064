/** Typed blind: whoever thinks that a note is open does not look up, and his letters must answer nothing. */
import { describe, expect, it } from 'vitest';
import { start } from '../../src/screens/base/start.ts';
import { update } from '../../src/screens/show/update.ts';
import { benchRow } from '../../src/screens/terminal/bench-row.ts';
import { Bench } from '../job/bench.ts';
import { Desk } from './desk.ts';
import { leftAlone } from './plan-screens.ts';

const COVER = `putback: 1
job: Right cover leaks
bolts: {S: M6x25, M: M6x35}
pieces:
  cover: {bolts: S S M, torque: 10 N·m}
diary:
`;

/** All out but 3, which is stuck: STOP before anybody pries. */
function stillIn(): Desk {
  const bench = new Bench(COVER);
  bench.mark({ do: 'out', piece: 'cover', holes: ['1', '2'] });
  bench.mark({ do: 'state', piece: 'cover', hole: '3', state: 'stuck' });
  const desk = new Desk(bench).open('cover');
  desk.state = {
    ...desk.state,
    view: { screen: 'piece', piece: 'cover', step: { step: 'off-count' } },
  };
  return desk;
}

/** M in the hand, at a hole for S. */
function wrongBolt(): Desk {
  const bench = new Bench(COVER);
  bench.mark({ do: 'out', piece: 'cover' });
  bench.mark({ do: 'off', piece: 'cover' });
  return new Desk(bench).open('cover').press('go m 1 space');
}

/** The piece is pried at with a bolt in it. */
function beforeOff(): Desk {
  const desk = stillIn();
  const wish = { do: 'off', piece: 'cover' } as const;
  const refused = desk.bench.ask(wish);
  if (refused.ok) throw new Error('3 is still in');
  const back = { step: 'off-count' } as const;
  const step = { step: 'stop', wish, refused: refused.refused, back } as const;
  desk.state = { ...desk.state, view: { screen: 'piece', piece: 'cover', step } };
  return desk;
}

/** A brake lever that nobody has pumped yet, at its test. */
function beforeTest(): Desk {
  const bench = new Bench('putback: 1\njob: Brakes\npieces: {brake-lever: {}}\ndiary:\n');
  bench.mark({ do: 'off', piece: 'brake-lever' });
  bench.mark({ do: 'on', piece: 'brake-lever' });
  const desk = new Desk(bench).press('t');
  while (!/> .*holds at a walk/.test(desk.frame)) desk.press('down');
  return desk.press('enter');
}

const STOPS: Readonly<Record<string, () => Desk>> = {
  'a bolt that is still in, at the count': stillIn,
  'a bolt that is still in, at the piece': beforeOff,
  'a wrong bolt': wrongBolt,
  'a rag that was left inside, at its gate': () =>
    new Desk(leftAlone()).open('case-cover').press('go go'),
  'a test with the lever not pumped': beforeTest,
};

/** Without w alone, which asks why, and q, which leaves the program. */
const LETTERS = [...'abcdefghijklmnoprstuvxyz'];

describe.each(Object.entries(STOPS))('STOP for %s', (_, at) => {
  it('is overruled by no sentence, whatever letter it begins with', () => {
    expect(at().frame).toContain('STOP');
    for (const first of LETTERS) {
      const desk = at();
      const before = desk.bench.entries.length;
      desk.blind(`${first}wo washers were new, we saw\n`);
      const made = desk.bench.entries.slice(before);
      expect({ first, made: made.filter((e) => e.because !== undefined) }).toEqual({
        first,
        made: [],
      });
      expect({ first, verbs: made.map((e) => e.verb) }).not.toMatchObject({
        verbs: expect.arrayContaining(['removed']),
      });
    }
  });

  it('takes a note, and is not passed by it', () => {
    const desk = at();
    const before = desk.bench.entries.length;
    desk.blind('ngasket torn; two washers are new\n');
    expect(desk.bench.entries.slice(before)).toMatchObject([
      { verb: 'note', value: 'gasket torn; two washers are new' },
    ]);
    expect(desk.frame).toContain('Noted.');
  });

  it('is overruled by w and a reason, pressed one after the other', () => {
    const desk = at().press('w');
    expect(desk.screen).toBe('field');
    desk.blind('it is the stub').press('enter');
    expect(desk.bench.entries.at(-1)?.because).toBe('it is the stub');
  });
});

describe('a letter that is no key', () => {
  it('says so, and drops what comes right behind it until Enter', () => {
    const desk = stillIn().blind('two');
    expect(desk.frame).toContain('t is no key here. What was typed right behind it did nothing.');
    expect(desk.screen).toBe('off-count');
    desk.blind('two\n').press('w');
    expect(desk.screen).toBe('field');
  });

  it('drops nothing that comes after a pause', () => {
    const desk = stillIn().press('t w');
    expect(desk.screen).toBe('field');
  });

  it('leaves Esc and the arrows as they are', () => {
    const desk = stillIn().blind('t');
    desk.happen({ on: 'press', press: 'escape', soon: true });
    expect(desk.screen).not.toBe('off-count');
  });
});

const UNKNOWN = 'putback: 1\njob: Cover\npieces:\n  cover: {bolts: "? ? ?"}\ndiary:\n';
const outs = (desk: Desk) => desk.bench.entries.filter((e) => e.verb === 'out');

describe('a letter behind a dot', () => {
  it('marks nothing: it is no length, and what comes behind it is nothing either', () => {
    const desk = new Desk(new Bench(UNKNOWN)).open('cover').press('o');
    expect(desk.screen).toBe('off');
    desk.blind('.abc ');
    expect(outs(desk)).toEqual([]);
    expect(desk.frame).toContain('.a is no length');
    // Slowly typed it is no length either.
    desk.press('a c space');
    expect(outs(desk)).toEqual([]);
    desk.press('backspace a');
    expect(outs(desk)).toHaveLength(1);
  });

  it('behind a whole length it does not turn millimetres into a kind', () => {
    const bench = new Bench(COVER);
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    const desk = new Desk(bench).open('cover').press('go').blind('.25mm ');
    expect(desk.bench.entries.filter((e) => e.verb === 'in')).toEqual([]);
    expect(desk.frame).toContain('.25m is no length');
    // After a pause one says another thing, or marks all of that length.
    expect(desk.press('m').frame).toContain('In your hand: M');
    desk.press('backspace').type('.25').press('a');
    expect(bench.states('cover')).toBe('in in out');
  });

  it('digits, a point and a comma are a length', () => {
    const desk = new Desk(new Bench(UNKNOWN)).open('cover').press('o').blind('.25 .12,5 ');
    expect(outs(desk)).toHaveLength(2);
  });
});

describe('keys that are pressed before a row of the bench can be seen', () => {
  const job = new Bench().job;
  const now = '2026-04-11T18:25:00+02:00';
  const row = (file: string) => benchRow(file, { ok: true, job, faults: [] }, now);
  const rows = ['a.yaml', 'b.yaml', 'c.yaml'].map(row);
  const at = { columns: 80, rows: 24, colour: false, ascii: false, now } as const;

  function typed(...presses: string[]) {
    const { state } = start({ on: { folder: '/bench' }, ...at });
    return presses.reduce((s, press) => update(s, { on: 'press', press }).state, state);
  }

  it('are meant for the whole list: the third job is opened, though one was read first', () => {
    const part = update(typed('down', 'down', 'enter'), {
      on: 'bench',
      jobs: rows.slice(0, 1),
      more: 2,
    });
    expect(part.effects).toEqual([]);
    const whole = update(part.state, { on: 'bench', jobs: rows });
    expect(whole.effects).toEqual([{ do: 'open', file: 'c.yaml' }]);
  });

  it('where none was pressed the first rows are shown at once', () => {
    const part = update(typed(), { on: 'bench', jobs: rows.slice(0, 1), more: 2 });
    expect(part.state.view.screen).toBe('bench');
    expect(part.state.waiting).toBe(null);
  });
});
