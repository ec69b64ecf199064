import { describe, expect, it } from 'vitest';
import { sayEntry } from '../../../src/job/fold/say-entry.ts';
import { readJob } from '../../../src/job/read.ts';
import { asPrinted } from '../../../src/model/said.ts';
import type { Wish, Writable } from '../../../src/model/types.ts';
import { Bench } from '../bench.ts';

const JOB = `putback: 1
job: Cover weeps
bolts: {S: M6x25, M: M6x35}
pieces:
  lever: {bolts: S, torque: 9 N·m, under: hose}
  hose:
    routes: behind the frame # mine
  wire:
  cover:
    under: [lever]
    bolts: S S M S
    sequence: [1, 3, 2, 4]
    map: |
      1 . 2
      4 . 3
  lid:
    holes: {7: {note: oil passage}}
    map: |
      1 7
diary:
`;

const write = (piece: string, key: Writable, text: string): Wish => ({
  do: 'write',
  piece,
  key,
  text,
});
const said = (b: Bench, key: string) => readJob(b.text, '').upper.pieces.get(key);

describe('a text goes into the file', () => {
  it.each<[string, Wish, string, object]>([
    [
      'one more where there is one',
      write('hose', 'routes', 'over the bracket'),
      '    routes: [behind the frame, over the bracket] # mine\n',
      { routes: [asPrinted('behind the frame'), asPrinted('over the bracket')] },
    ],
    [
      'the first',
      write('wire', 'marks', ' dot at 12 '),
      '  wire:\n    marks: dot at 12\n',
      { marks: [asPrinted('dot at 12')] },
    ],
    [
      'of several lines as one',
      write('wire', 'joint', 'dry,\n  clean'),
      '    joint: dry, clean\n',
      { joint: [asPrinted('dry, clean')] },
    ],
    [
      'a neighbour',
      write('wire', 'bridges', 'cover'),
      '    bridges: cover\n',
      { bridges: ['cover'] },
    ],
    [
      'another neighbour',
      write('cover', 'under', 'hose'),
      '    under: [lever,  hose]\n',
      { under: ['lever', 'hose'] },
    ],
    [
      'a torque where there is none',
      write('cover', 'torque', '10 N·m, manual 2-17'),
      '    torque: 10 N·m, manual 2-17\n',
      {
        torque: {
          text: '10 N·m, manual 2-17',
          quantity: { value: 10, to: null, unit: 'N·m' },
          where: 'manual 2-17',
        },
      },
    ],
    [
      'the order anew',
      write('cover', 'sequence', '2,4,1,3'),
      '    sequence: 2 4 1 3\n',
      { sequence: ['2', '4', '1', '3'] },
    ],
    [
      'the picture anew',
      write('cover', 'map', '\n   . 1 2\n   4 3 .\n\n'),
      '    map: |\n      . 1 2\n      4 3 .\n',
      { map: '. 1 2\n4 3 .\n' },
    ],
    [
      'a picture that stands in',
      write('cover', 'map', '      1 2\n  4 3\n'),
      '    map: |\n      1 2\n      4 3\n',
      { map: '1 2\n4 3\n' },
    ],
    [
      'a picture on one line',
      write('lever', 'map', '1'),
      '  lever: {bolts: S, torque: 9 N·m, under: hose, map: "1"}\n',
      { map: '1' },
    ],
    [
      'a picture of more holes, without a row',
      write('lid', 'map', '1 7\n2 .'),
      '    map: |\n      1 7\n      2 .\n',
      { map: '1 7\n2 .\n' },
    ],
  ])('%s', (_, wish, line, says) => {
    const b = new Bench(JOB);
    const before = readJob(JOB, '').upper;
    const { piece = '' } = b.mark(wish);
    expect(b.text).toContain(line);
    expect(said(b, piece)).toMatchObject(says);
    expect(b.piece(piece).spec).toMatchObject(says);
    expect(readJob(b.text, '').faults).toEqual([]);
    expect(b.ask(wish)).toMatchObject({ ok: true, entry: null });
    // From the shell, at any later time, by what stands there.
    const { id } = b.mark({ do: 'note', text: 'later' });
    const undo = b.mark({ do: 'undo', id: b.entries.at(-2)?.id ?? id });
    expect(readJob(b.text, '').upper).toEqual(before);
    b.mark({ do: 'undo', id: undo.id });
    expect(said(b, piece)).toMatchObject(says);
  });
});

describe('a text is not put where it cannot be', () => {
  it.each<[string, Wish, object]>([
    ['no such piece', write('hoze', 'routes', 'x'), { code: 'no-such-piece', piece: 'hoze' }],
    [
      'no such neighbour',
      write('cover', 'under', 'hoze'),
      { code: 'no-such-piece', piece: 'hoze' },
    ],
    ['itself', write('cover', 'along', 'cover'), { code: 'itself' }],
    [
      'round in a circle',
      write('hose', 'under', 'cover'),
      { code: 'circle', circle: ['hose', 'lever', 'cover', 'hose'] },
    ],
    [
      'round in a circle by a bridge',
      write('cover', 'bridges', 'hose'),
      { code: 'circle', circle: ['hose', 'lever', 'cover', 'hose'] },
    ],
    [
      'round in a circle along',
      write('lever', 'along', 'cover'),
      { code: 'circle', circle: ['lever', 'cover', 'lever'] },
    ],
    ['nothing', write('cover', 'routes', ' \n '), { code: 'empty-text' }],
    [
      'another torque stands there',
      write('lever', 'torque', '8 N·m'),
      { code: 'stands-already', was: '9 N·m' },
    ],
    ['an order that leaves one out', write('cover', 'sequence', '1 2 3'), { code: 'bad-text' }],
    ['an order with a strange one', write('cover', 'sequence', '1 2 3 4 5'), { code: 'bad-text' }],
    ['an order in words', write('cover', 'sequence', 'crosswise'), { code: 'bad-text' }],
    ['a picture that leaves one out', write('cover', 'map', '1 2\n3 .'), { code: 'bad-text' }],
    ['a picture with a strange one', write('cover', 'map', '1 2 5\n4 3 .'), { code: 'bad-text' }],
    ['a picture of other names', write('cover', 'map', '1 2\n4 3a'), { code: 'bad-text' }],
    ['a ragged picture', write('cover', 'map', '1 2\n4 3 .'), { code: 'bad-text' }],
    [
      'a picture without one that something is said of',
      write('lid', 'map', '1 2'),
      { code: 'bad-text' },
    ],
  ])('%s', (_, wish, refusal) => {
    const b = new Bench(JOB);
    expect(b.refusal(wish)).toMatchObject(refusal);
    // Wrong use: no reason makes it right.
    expect(b.refusal({ ...wish, because: 'so it is' })).toMatchObject(refusal);
  });

  it('says what is missing and what is too much', () => {
    const verdict = new Bench(JOB).ask(write('cover', 'map', '1 2\n5 6'));
    expect(verdict).toMatchObject({
      refused: { say: 'The map leaves out 3 and 4 and draws 5 and 6, and there is no such hole.' },
    });
  });
});

describe('taken back when the file has moved on', () => {
  it.each<[string, Wish, (text: string) => string]>([
    [
      'the text was changed',
      write('hose', 'routes', 'left'),
      (t) => t.replace(', left]', ', left of it]'),
    ],
    ['the text was taken out', write('hose', 'routes', 'left'), (t) => t.replace(', left]', ']')],
    [
      'the order was changed',
      write('cover', 'sequence', '1 2 3 4'),
      (t) => t.replace('1 2 3 4', '4 3 2 1'),
    ],
    [
      'the torque was changed',
      write('cover', 'torque', '10 N·m'),
      (t) => t.replace('10 N·m', '11 N·m'),
    ],
    [
      'the picture was drawn anew',
      write('cover', 'map', '1 2\n4 3'),
      (t) => t.replace('1 2\n      4 3', '2 1\n      4 3'),
    ],
  ])('%s: the undo is noted, the file left, and it says so', (_, wish, hand) => {
    const b = new Bench(JOB);
    const { id, piece, value } = b.mark(wish);
    b.text = hand(b.text);
    const text = b.text;
    const verdict = b.ask({ do: 'undo', id });
    expect(verdict).toMatchObject({
      ok: true,
      edits: [],
      warnings: [
        {
          code: 'file-changed',
          say: `The ${value} of ${piece} was changed in the file since: that stays as it is.`,
        },
      ],
    });
    b.mark({ do: 'undo', id });
    expect(b.text).toBe(text);
  });

  it('a text put in twice by two hands is taken out once and again only while it stands', () => {
    const b = new Bench(JOB);
    const { id } = b.mark(write('hose', 'routes', 'left'));
    const undo = b.mark({ do: 'undo', id });
    b.text = b.text.replace('behind the frame', 'left');
    expect(b.ask({ do: 'undo', id: undo.id })).toMatchObject({
      edits: [],
      warnings: [{ code: 'file-changed' }],
    });
  });

  it('what was written and then corrected is not taken away from under the correction', () => {
    const b = new Bench(JOB);
    const { id } = b.mark(write('cover', 'torque', '10 N·m'));
    const over = b.mark({ do: 'correct', piece: 'cover', what: 'torque', truth: '8 N·m' });
    expect(b.refusal({ do: 'undo', id })).toEqual({ code: 'depends', ids: [over.id] });
    expect(b.refusal(write('cover', 'torque', '7 N·m'))).toMatchObject({
      code: 'stands-already',
      was: '10 N·m',
    });
    b.mark({ do: 'undo', id: over.id });
    b.mark({ do: 'undo', id });
    expect(b.text).toBe(JOB);
  });

  it('marks before it are taken back without it, and it without them', () => {
    const b = new Bench(JOB);
    const out = b.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    const { id } = b.mark(write('cover', 'routes', 'left'));
    b.mark({ do: 'out', piece: 'cover', holes: ['2'] });
    expect([b.ask({ do: 'undo', id }).ok, b.ask({ do: 'undo', id: out.id }).ok]).toEqual([
      true,
      true,
    ]);
  });
});

it('is told in a line', () => {
  const b = new Bench(JOB);
  const tell = (wish: Wish) => sayEntry(b.mark(wish), b.job);
  expect([
    tell(write('hose', 'routes', 'left')),
    tell(write('cover', 'sequence', '1 2 3 4')),
    tell(write('cover', 'map', '1 2\n4 3')),
    tell(write('lever', 'map', '1')),
  ]).toEqual([
    'routes written down: left',
    'sequence written down: 1 2 3 4, instead of 1 3 2 4',
    'map drawn anew',
    'map drawn',
  ]);
});
