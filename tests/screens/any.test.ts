import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { width } from '../../src/screens/kit/text.ts';
import { picture, rowsOf } from '../../src/screens/show/picture.ts';
import { KEYS } from '../../src/screens/show/screens.ts';
import { Bench } from '../job/bench.ts';
import { LEFT_COVER, lid } from './covers.ts';
import { Desk } from './desk.ts';
import { everyScreen } from './every-screen.ts';

const NAMED = [...new Set(KEYS.flatMap((k) => [...k.presses]))].filter(
  (p) => p !== 'ctrl-c' && p !== 'q',
);
const LETTERS = [...'smlpaeoq.+-!0123456789 é字\u202e'].map((c) => (c === ' ' ? 'space' : c));
/** Mostly what leads on, so that the walk gets somewhere. */
const press = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom('space', 'space', 'enter', 's', 'm', 'l') },
  { weight: 3, arbitrary: fc.constantFrom(...NAMED) },
  { weight: 2, arbitrary: fc.constantFrom(...LETTERS) },
);
const walk = fc.array(press, { maxLength: 80 });

function looksRight(desk: Desk): void {
  const { lines, cursor } = picture(desk.state);
  expect(lines).toHaveLength(desk.state.rows);
  expect(lines.filter((l) => width(l) > desk.state.columns)).toEqual([]);
  if (cursor) expect(cursor.y).toBeLessThan(desk.state.rows);
}

describe('any keys in any order', () => {
  it('never break a screen, and every mark that shows is in the diary', () => {
    const start = fc.constantFrom(
      LEFT_COVER,
      lid(5),
      lid(40),
      'putback: 1\njob: Nothing yet\ndiary:\n',
    );
    fc.assert(
      fc.property(start, walk, fc.boolean(), (text, presses, onBench) => {
        const desk = new Desk(new Bench(text), onBench ? { on: { folder: 'jobs' } } : {});
        for (const p of presses) {
          desk.happen({ on: 'press', press: p });
          looksRight(desk);
        }
        expect(desk.state.waiting).toBeNull();
        if (desk.state.open) {
          expect(desk.state.open.job.entries.length).toBe(desk.bench.entries.length);
        }
      }),
      { numRuns: 60 },
    );
  });

  it.each(everyScreen())('from $name', ({ desk }) => {
    const from = desk.state;
    for (const p of [...NAMED, ...LETTERS]) {
      desk.state = from;
      desk.happen({ on: 'press', press: p });
      // A key that does nothing here leaves the very state, and so the picture.
      if (desk.state !== from) looksRight(desk);
    }
  });

  it('going back only, leads out of every screen and never ends the program', () => {
    for (const { desk, name } of everyScreen()) {
      for (let i = 0; i < 20; i += 1) desk.press('escape');
      expect(desk.done, name).not.toContain('quit');
      expect(['job', 'bench', 'wait', 'faults'], name).toContain(desk.state.view.screen);
    }
  });
});

describe('text from a file', () => {
  const EVIL = [
    '\\x1b]0;title\\x07',
    '\\x1b[2J',
    '\\u202egnp',
    'a\\nb\\tc',
    '\\u200b',
    '\\x9b31m',
    '字字字',
    '👩‍🔧',
  ];
  const text = EVIL.join(' ');
  const job = `putback: 1
job: "${text}"
machine: "${text}"
bolts:
  S: "M6x25 ${text}"
  M: M6x35
pieces:
  cover:
    name: "${text}"
    bolts: S S M
    torque: "10 N·m, ${text}"
    joint: "${text}"
    loose: ["${text}"]
    marks: "${text}"
    routes: "${text}"
    caution: {removal: "${text}", fitting: "${text}"}
    tip: {removal: "${text}", fitting: "${text}"}
    note: "${text}"
    tray: "${text}"
    holes:
      1: {note: "${text}"}
diary:
`;
  /** Nothing but printable characters; format characters and controls would be obeyed or hidden. */
  const HARMLESS = /^[^\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]*$/u;

  it('cannot steer the terminal on any screen', () => {
    const desk = new Desk(new Bench(job), { on: { folder: 'a\x1b[31m\u202eb' } });
    const seen = new Set<string>();
    const look = () => {
      seen.add(desk.screen);
      for (const row of rowsOf(desk.state)) expect(row).toMatch(HARMLESS);
      looksRight(desk);
    };
    const keys =
      'go w escape go go go 1 go 2 m go 3 - s ? escape go o go ' +
      'go enter go go k go s go a m 1 go w escape escape go go go ! go';
    look();
    for (const p of keys.split(' ')) {
      desk.press(p);
      look();
    }
    desk.happen({ on: 'quiet', say: 'a\x1b[31mb\u202e' });
    look();
    expect([...seen].sort()).toEqual(
      expect.arrayContaining([
        'bench',
        'job',
        'note',
        'look',
        'read',
        'off',
        'on',
        'trouble',
        'keys',
        'field',
      ]),
    );
  });
});
