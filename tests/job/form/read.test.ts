import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/job/read.ts';
import { asPrinted, textsIn } from '../../../src/model/said.ts';
import type { PieceSpec } from '../../../src/model/types.ts';
import { EXAMPLE, FULL } from './example.ts';

const read = (text: string) => readJob(text, 'a.yaml');
const HEAD = 'putback: 1\njob: Left cover\n';

function piece(yaml: string): PieceSpec {
  const { upper, faults } = read(`${HEAD}pieces:\n  cover: ${yaml}\n`);
  expect(faults).toEqual([]);
  return upper.pieces.get('cover')!;
}

const FINGERS = asPrinted('Keep fingers off the edge.');

describe('a job file in its short spelling', () => {
  const { upper, entries, faults, unreadable } = read(EXAMPLE);

  it('is read in silence', () => {
    expect(faults).toEqual([]);
    expect(unreadable).toBe(false);
  });

  it('says what the job is', () => {
    expect(upper).toMatchObject({
      version: 1,
      job: 'Left cover weeps oil',
      machine: 'Hollin 400 Twin, 1998, 41230 km',
      complaint: 'Oil along the bottom edge of the left cover after a run.',
      found: null,
      done: null,
    });
    expect([...upper.kinds.keys()]).toEqual(['S', 'M', 'L', 'P']);
    expect(upper.kinds.get('L')).toMatchObject({ thread: 'M6', length: 55, tool: '8 mm' });
  });

  it('says all about a piece', () => {
    expect([...upper.pieces.keys()]).toEqual([
      'gear-lever',
      'sprocket-cover',
      'breather-hose',
      'alternator',
    ]);
    const cover = upper.pieces.get('alternator')!;
    expect(cover).toMatchObject({
      name: 'Alternator cover',
      under: ['gear-lever', 'sprocket-cover'],
      torque: { quantity: { value: 10, unit: 'N·m' }, where: 'manual 2-17' },
      into: asPrinted('cast aluminium'),
      joint: [asPrinted('new gasket, dry; dowels at 2 and 8')],
      loose: [asPrinted('2 dowels'), asPrinted('thrust washer stays on the shaft')],
      caution: {
        removal: [],
        fitting: [asPrinted('The magnet pulls the cover in. Keep fingers off the edge.')],
      },
      tip: { removal: [asPrinted('Top bolt last, so that the cover hangs.')], fitting: [] },
    });
    expect(cover.row?.map((r) => [r.kind, ...r.with].join('+')).join(' ')).toBe(
      'S S S M+clip S S S+copper S S L S',
    );
    expect(cover.map?.split('\n')[1]).toBe('11 .  .  .  3');
    expect([...cover.holes.keys()]).toEqual(['7', '10']);
    expect(cover.holes.get('10')?.turns).toBe(15);
  });

  it('a piece of which only the name is said is a piece', () => {
    expect(upper.pieces.get('breather-hose')).toMatchObject({ name: 'Breather hose', row: null });
  });

  it('says what there is to do and to buy', () => {
    expect(upper.tasks.get('weep')).toEqual({
      key: 'weep',
      verb: 'test',
      say: asPrinted('Five minutes at idle'),
      before: [],
      after: ['fill'],
      while: [],
      limit: asPrinted('no oil at the bottom edge'),
      when: null,
      takes: null,
      note: null,
      proves: [],
    });
    expect(upper.buys.get('gasket')).toMatchObject({ price: '14.20', once: true });
  });

  it('says what happened, in the order of the lines', () => {
    expect(entries.map((e) => `${e.verb} ${e.value}`)).toEqual([
      'out S S S M+clip S S S+copper S ! L S',
      'state stuck',
      'removed all',
      'in M+clip',
      'tight full',
      'undo bZ4yK1uW',
    ]);
    expect(entries[1]).toEqual({
      at: '2026-04-11T18:26:10+02:00',
      id: 'Qe81mTd2',
      piece: 'alternator',
      hole: ['9'],
      verb: 'state',
      value: 'stuck',
      says: 'soaking, heat tomorrow',
    });
  });
});

describe('a job file in its full spelling', () => {
  const { upper, faults } = read(FULL);
  const cover = upper.pieces.get('cover')!;

  it('is read in silence', () => {
    expect(faults).toEqual([]);
    expect(upper).toMatchObject({ version: 1, done: 'New gasket, faces cleaned' });
  });

  it('what it may be, and what is looked at, in the long form and the short', () => {
    expect(upper.suspects.get('float')).toEqual({
      key: 'float',
      what: 'Float needle leaks',
      likely: 'often',
      piece: 'cover',
      part: 'washer',
      takes: '30 min',
      note: null,
    });
    expect(upper.suspects.get('coil')).toMatchObject({ what: 'Ignition coil open', likely: null });
    expect(upper.suspects.get('switch')).toMatchObject({ likely: 0.5 });
    expect(upper.checks.get('primary')).toEqual({
      key: 'primary',
      check: 'Coil primary',
      limit: '0.8..1.2 ohm',
      bad: ['coil'],
      along: [],
      takes: '5 min',
      under: ['cover'],
      needs: [],
      caution: [],
      note: null,
    });
    expect(upper.checks.get('bowl')).toMatchObject({
      along: ['float'],
      caution: ['Fuel wiped up.'],
    });
    expect(upper.tasks.get('spark-again')).toMatchObject({ proves: ['spark'] });
  });

  it('what renewing costs now and later, each figure of which may be missing', () => {
    expect(upper.tasks.get('seal')?.weigh).toEqual({
      now: { price: '12.50', takes: '40 min' },
      later: { price: '12.50', takes: '3 h' },
      chance: '1 in 6',
      harm: { chance: '1 in 20', price: '60.00', takes: '2 h' },
    });
    expect(upper.tasks.get('bearing')?.weigh).toEqual({
      now: { price: '30', takes: null },
      later: null,
      chance: null,
      harm: { chance: 'rarely', price: null, takes: null },
    });
    expect(upper.tasks.get('cure')?.weigh).toBeUndefined();
  });

  it('kinds by their parts', () => {
    expect(upper.kinds.get('X')).toMatchObject({
      thread: 'M8x1',
      length: 30,
      leftHand: true,
      once: true,
    });
    expect(upper.kinds.get('S')).toMatchObject({ class: '8.8', threaded: 18 });
  });

  it('a row as a list', () => {
    expect(cover.row).toEqual([
      { kind: 'S', with: [] },
      { kind: 'S', with: ['clip', 'washer'] },
      { kind: 'X', with: ['bracket'] },
      { kind: 'S', with: [] },
    ]);
    expect(upper.pieces.get('lever')?.row).toEqual([]);
  });

  it('figures, holes, passes, order', () => {
    expect(cover).toMatchObject({
      thick: 12,
      thread: { from: 3, to: 19 },
      pitch: [20, 25],
      sequence: ['1', '3', '2', '4'],
      first: ['1', '3'],
      care: ['case'],
      caution: { removal: [FINGERS], fitting: [FINGERS] },
    });
    expect(textsIn(cover.tip.fitting)).toEqual(['Top bolt last.', 'Two hands.']);
    expect(cover.passes?.map((p) => p.name)).toEqual(['snug', 'part', 'full', 'angle', 'again']);
    expect(cover.passes?.[3]?.angle).toBe(90);
    expect(cover.holes.get('2')).toMatchObject({ at: [84, -31], wet: true, group: 'inner' });
    expect(cover.holes.get('1')).toMatchObject({ proud: 16.5, into: asPrinted('steel insert') });
  });
});

describe('short and full are two spellings of one thing', () => {
  it.each([
    ['{bolts: S S+clip}', '{bolts: [S, {kind: S, with: clip}]}'],
    ['{bolts: S S+clip}', '\n    bolts:\n      - S\n      - S+clip'],
    ['{bolts: S S+clip}', '{bolts: "S  S+clip"}'],
    ['{pitch: 20}', '{pitch: [20, 20]}'],
    ['{pitch: 20}', '{pitch: 20 mm}'],
    ['{joint: dry}', '{joint: [dry]}'],
    ['{tip: slowly}', '{tip: {removal: slowly, fitting: [slowly]}}'],
    ['{bolts: S S S, sequence: 1 3 2}', '{bolts: S S S, sequence: [1, 3, 2]}'],
    ['{passes: full}', '{passes: [{name: full}]}'],
    ['', '{}'],
    ['', '{name: , bolts: , holes: }'],
  ])('%s is %s', (short, full) => {
    expect(piece(full)).toEqual(piece(short));
  });
});

describe('what is missing is no fault', () => {
  it.each([
    ['two lines', HEAD],
    ['five lines', `${HEAD}pieces:\n  cover: {bolts: S S S}\ndiary:\n`],
    ['a diary without entries', `${HEAD}diary:\n`],
    ['sections without anything', `${HEAD}bolts:\npieces:\ntasks:\nbuy:\ndiary:\n`],
    ['no last newline', HEAD.trimEnd()],
    ['comments everywhere', `# a\n${HEAD}# b\npieces: # c\n  # d\n  cover: # e\n`],
    ['a byte order mark', `\uFEFF${HEAD}`],
    ['a line for editors on top', `# yaml-language-server: $schema=putback.schema.json\n${HEAD}`],
    ['a document start', `---\n${HEAD}`],
    ['in brackets', '{putback: 1, job: Left cover}'],
    [
      'in brackets, all in one line',
      `{putback: 1, job: Left cover, pieces: {${Array.from({ length: 80 }, (_, i) => `p${i}: {bolts: S}`).join(', ')}}}`,
    ],
  ])('%s', (_what, text) => {
    expect(read(text).faults).toEqual([]);
    expect(read(text).upper.job).toBe('Left cover');
  });
});

describe('figures that are names stay what they are', () => {
  it.each(['1.10', '007', '1E3', '12345678901234567890', '0x1F', '+5', '1_000', '12:30'])(
    '%s',
    (text) => {
      const { upper, faults } = read(
        `putback: 1\njob: ${text}\nbuy: {oil: {what: oil, price: ${text}}}\n`,
      );
      expect(faults).toEqual([]);
      expect(upper.job).toBe(text);
      expect(upper.buys.get('oil')?.price).toBe(text);
    },
  );
});

describe('a file of a newer form opens for reading', () => {
  it('and what it says in new words is not argued with', () => {
    const { upper, faults, unreadable } = read(
      'putback: 2\njob: Left cover\nwheels: round\npieces: {cover: {bolts: S S, colour: red}}\n',
    );
    expect(unreadable).toBe(false);
    expect(upper).toMatchObject({ version: 2, job: 'Left cover' });
    expect(upper.pieces.get('cover')?.row).toHaveLength(2);
    expect(faults.map((f) => f.code)).toEqual(['newer-version']);
  });
});

describe('a key that stands in the wrong place', () => {
  it.each([
    ['torque: 10 N·m', 'It belongs to a piece or a hole or a pass. '],
    ['price: 3', 'It belongs to a thing to buy or a cost. '],
    ['peices:', 'Did you mean pieces? '],
    ['note: x', ''],
    ['wheels: 2', ''],
  ])('%s', (line, hint) => {
    const [fault] = read(`${HEAD}${line}\n`).faults;
    expect(fault?.code).toBe('unknown-key');
    const known =
      'putback, job, machine, machine-id, like, complaint, found, done, bolts, pieces, tasks, buy, suspects, checks, diary';
    expect(fault?.fix).toBe(hint.trim() || `Known here: ${known}.`);
  });
});

describe('a key that only the diary knows', () => {
  it('is answered with the keys that can stand there', () => {
    const [fault] = read(`${HEAD}suspects:\n  brushes: {what: Brushes worn, in: starter}\n`).faults;
    expect(fault).toMatchObject({
      code: 'unknown-key',
      fix: 'It belongs to an entry of the diary. Known here: what, likely, piece, part, takes, note.',
    });
  });
});

describe('a figure that only a question to decide has', () => {
  it.each([
    ['  drain: {do: Drain the oil, now: 12}', 'Only a question to decide has it.'],
    ['  seal: {decide: Renew it?, now: {chance: 1 in 6}}', 'It belongs to harm:.'],
  ])('%s', (line, fix) => {
    const [fault, ...more] = read(`${HEAD}tasks:\n${line}\n`).faults;
    expect(fault).toMatchObject({ code: 'unknown-key', fix });
    expect(more).toEqual([]);
  });
});

describe('any file with readable YAML opens, whatever is wrong in it', () => {
  it('what a fault does not touch is there', () => {
    const { upper, entries, faults, unreadable } = read(`putback: 1
job: Left cover
pieces:
  cover: {bolts: S 8 S, torqe: 10 N·m, thick: thin, tray: cup 2}
  Bad Name: {bolts: S}
  lever: P
diary:
  - {at: yesterday, id: k3Vb9xQe, piece: cover, removed: all}
  - {at: 2026-04-11T18:25:40+02:00, id: w0PzLr5n, piece: cover, removed: all}
`);
    expect(unreadable).toBe(false);
    expect(faults.map((f) => `${f.line}:${f.column} ${f.code}`)).toEqual([
      '4:20 bad-row',
      '4:25 unknown-key',
      '4:47 bad-length',
      '5:3 bad-name',
      '6:10 wrong-type',
      '8:10 bad-time',
    ]);
    const cover = upper.pieces.get('cover')!;
    // A word that is no bolt keeps its place, so that the holes behind it keep theirs.
    expect(cover.row).toHaveLength(3);
    expect(cover).toMatchObject({ tray: 'cup 2', thick: null, torque: null });
    expect([...upper.pieces.keys()]).toEqual(['cover', 'lever']);
    expect(entries.map((e) => e.id)).toEqual(['w0PzLr5n']);
  });
});
