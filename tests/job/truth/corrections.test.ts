import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { livingEntries } from '../../../src/job/diary/living.ts';
import { fold } from '../../../src/job/fold/fold.ts';
import { sayEntry } from '../../../src/job/fold/say-entry.ts';
import { readJob } from '../../../src/job/read.ts';
import {
  correctedUpper,
  figuresOf,
  figuresOfHole,
  silentTruths,
  truthFault,
} from '../../../src/job/truth/corrections.ts';
import { asPrinted } from '../../../src/model/said.ts';
import type { Correctable, Entry, Job } from '../../../src/model/types.ts';
import { Bench } from '../bench.ts';

const JOB = `putback: 1
job: Cover weeps
bolts: {S: "M8x25 flange, 12 mm", L: "M8x55 flange, 12 mm"}
pieces:
  cover:
    bolts: S S S L
    torque: 10 N·m, manual 2-17
    into: cast aluminium
    thick: 1/2 in
    thread: 0..14
    joint: [new gasket, dry]
    loose: [2 dowels, 1 washer]
    caution: Keep fingers off the edge.
    tip: {removal: Top bolt last., fitting: Dowels first.}
    marks: dot at 12
    routes: [behind the frame, over the bracket]
    sequence: [1, 3, 2, 4]
    passes: [Snug, part  5 N·m, {name: full, torque: 10 N·m}]
    takes: 20 min
    note: printed in 1997
    holes:
      2: {turns: 15, note: oil passage}
      4: {torque: 12 N·m, proud: 3/8 in, thick: 40, thread: 3..19, into: steel}
tasks:
  oil: {do: Fill with 1.9 l of oil, limit: to the mark, when: cold, takes: 5 min, note: once, after: cover on}
diary:
`;

const bench = () => new Bench(JOB);
type Of = { piece?: string; hole?: string; task?: string };
const correct = (of: Of, what: Correctable, truth: string, printed?: string) =>
  ({ do: 'correct', ...of, what, truth, ...(printed === undefined ? {} : { printed }) }) as const;
const cover = { piece: 'cover' };
const told = (job: Job) =>
  job.corrections.map((c) => [c.hole ?? c.task ?? c.piece, c.what, c.printed, c.says]);
const spec = (job: Job) => job.upper.pieces.get('cover');

const GLOVES = { text: 'Gloves.', printed: 'Keep fingers off the edge.' };

describe('what is true counts, and how it is printed is kept', () => {
  it.each<[Correctable, string, string | undefined, string, object]>([
    [
      'torque',
      '8 N·m, bulletin 12',
      undefined,
      '10 N·m, manual 2-17',
      {
        torque: {
          quantity: { value: 8, to: null, unit: 'N·m' },
          where: 'bulletin 12',
          printed: '10 N·m, manual 2-17',
          text: '8 N·m, bulletin 12',
        },
      },
    ],
    [
      'torque',
      'see the bulletin',
      undefined,
      '10 N·m, manual 2-17',
      { torque: { quantity: null, where: null, text: 'see the bulletin' } },
    ],
    [
      'into',
      'cast iron',
      undefined,
      'cast aluminium',
      { into: { text: 'cast iron', printed: 'cast aluminium' } },
    ],
    // 1/2 in is 12.7 mm, by the definition of the inch.
    [
      'thick',
      '14',
      undefined,
      '1/2 in',
      { thick: 14, asWritten: { thick: { text: '14', printed: '1/2 in' } } },
    ],
    [
      'thread',
      '2..12',
      undefined,
      '0..14',
      { thread: { from: 2, to: 12 }, asWritten: { thread: { text: '2..12', printed: '0..14' } } },
    ],
    [
      'joint',
      'no sealant',
      'dr',
      'dry',
      { joint: [asPrinted('new gasket'), { text: 'no sealant', printed: 'dry' }] },
    ],
    [
      'loose',
      '3 dowels',
      '2',
      '2 dowels',
      { loose: [{ text: '3 dowels', printed: '2 dowels' }, asPrinted('1 washer')] },
    ],
    [
      'caution',
      'Gloves.',
      undefined,
      'Keep fingers off the edge.',
      { caution: { removal: [GLOVES], fitting: [GLOVES] } },
    ],
    [
      'tip',
      'Top bolt first.',
      'Top',
      'Top bolt last.',
      {
        tip: {
          removal: [{ text: 'Top bolt first.', printed: 'Top bolt last.' }],
          fitting: [asPrinted('Dowels first.')],
        },
      },
    ],
    [
      'marks',
      'dot at 6',
      undefined,
      'dot at 12',
      { marks: [{ text: 'dot at 6', printed: 'dot at 12' }] },
    ],
    [
      'routes',
      'under the bracket',
      'over',
      'over the bracket',
      {
        routes: [
          asPrinted('behind the frame'),
          { text: 'under the bracket', printed: 'over the bracket' },
        ],
      },
    ],
    [
      'sequence',
      '2,4 1 3',
      undefined,
      '1 3 2 4',
      {
        sequence: ['2', '4', '1', '3'],
        asWritten: { sequence: { text: '2 4 1 3', printed: '1 3 2 4' } },
      },
    ],
    ['takes', '45 min', undefined, '20 min', { takes: { text: '45 min', printed: '20 min' } }],
    [
      'note',
      'printed in 1999',
      undefined,
      'printed in 1997',
      { note: { text: 'printed in 1999', printed: 'printed in 1997' } },
    ],
  ])('%s of a piece: %s', (what, truth, printed, was, says) => {
    const b = bench();
    const entry = b.mark(correct(cover, what, truth, printed));
    const { job } = b;
    expect(entry).toMatchObject({ verb: 'corrected', value: what, piece: 'cover', was });
    expect(spec(job)).toMatchObject(says);
    expect(job.pieces.get('cover')?.spec).toBe(spec(job));
    expect(told(job)).toEqual([['cover', what, was, entry.says]]);
    // The person's part is not touched.
    expect(b.text).toBe(JOB);
    expect(job.printed).toEqual(readJob(JOB, '').upper);
  });

  it('a pass is corrected by itself, however the file spells it', () => {
    const b = bench();
    b.mark(correct(cover, 'passes', 'part 60 %', 'part'));
    b.mark(correct(cover, 'passes', 'full 9 N·m', 'full 10'));
    const [snug, part, full] = spec(b.job)?.passes ?? [];
    expect([snug?.printed, part?.printed, full?.printed]).toEqual([
      null,
      'part 5 N·m',
      'full 10 N·m',
    ]);
    expect([snug?.name, part?.torque?.quantity, full?.torque?.text]).toEqual([
      'snug',
      { value: 60, to: null, unit: '%' },
      '9 N·m',
    ]);
    expect(told(b.job)).toEqual([
      ['cover', 'passes', 'part 5 N·m', 'part 60 %'],
      ['cover', 'passes', 'full 10 N·m', 'full 9 N·m'],
    ]);
  });

  it.each<[string, Correctable, string, string, object]>([
    ['2', 'turns', '7.5', '15', { turns: 7.5 }],
    ['2', 'note', 'dry', 'oil passage', { note: { text: 'dry', printed: 'oil passage' } }],
    ['4', 'torque', '14 N·m', '12 N·m', { torque: { quantity: { value: 14 }, printed: '12 N·m' } }],
    // 3/8 in is 9.525 mm.
    ['4', 'proud', '9 mm', '3/8 in', { proud: 9 }],
    ['4', 'thick', '38', '40', { thick: 38 }],
    ['4', 'thread', '4..19', '3..19', { thread: { from: 4, to: 19 } }],
    ['4', 'into', 'cast iron', 'steel', { into: { text: 'cast iron', printed: 'steel' } }],
  ])('hole %s, %s: %s', (hole, what, truth, was, says) => {
    const b = bench();
    b.mark(correct({ piece: 'cover', hole }, what, truth));
    expect(spec(b.job)?.holes.get(hole)).toMatchObject(says);
    expect(told(b.job)).toEqual([[hole, what, was, truth]]);
  });

  it.each<[Correctable, string, string, object]>([
    [
      'step',
      'Fill with 2.1 l of oil',
      'Fill with 1.9 l of oil',
      { say: { text: 'Fill with 2.1 l of oil', printed: 'Fill with 1.9 l of oil' } },
    ],
    [
      'limit',
      'to the upper mark',
      'to the mark',
      { limit: { text: 'to the upper mark', printed: 'to the mark' } },
    ],
    ['when', 'hot', 'cold', { when: { text: 'hot', printed: 'cold' } }],
    ['takes', '10 min', '5 min', { takes: { text: '10 min', printed: '5 min' } }],
    ['note', 'twice', 'once', { note: { text: 'twice', printed: 'once' } }],
  ])('%s of a task: %s', (what, truth, was, says) => {
    const b = bench();
    b.mark(correct({ task: 'oil' }, what, truth));
    expect(b.job.tasks.get('oil')?.spec).toMatchObject(says);
    expect(b.job.upper.tasks.get('oil')).toMatchObject(says);
    expect(told(b.job)).toEqual([['oil', what, was, truth]]);
  });
});

describe('a hole takes what its piece says until something else is true of it', () => {
  it('then it is its own, and the others follow the piece', () => {
    const b = bench();
    b.mark(correct(cover, 'torque', '8 N·m'));
    b.mark(correct({ piece: 'cover', hole: '3' }, 'torque', '9 N·m'));
    const { job } = b;
    expect(spec(job)?.holes.get('3')?.torque?.quantity?.value).toBe(9);
    expect(told(job)).toEqual([
      ['cover', 'torque', '10 N·m, manual 2-17', '8 N·m'],
      ['3', 'torque', '10 N·m, manual 2-17', '9 N·m'],
    ]);
    const at = (hole: string) =>
      figuresOfHole(job, { piece: 'cover', hole }).find((f) => f.what === 'torque');
    const printed = '10 N·m, manual 2-17';
    expect(at('3')).toMatchObject({ text: '9 N·m', printed });
    expect(at('1')).toMatchObject({ text: '8 N·m', printed });
    expect(at('4')).toMatchObject({ text: '12 N·m', printed: null });
  });

  it('each text has what is printed at its own place, though another says the same', () => {
    const b = bench();
    b.mark(correct(cover, 'routes', 'behind the frame', 'over the bracket'));
    b.mark(correct(cover, 'tip', 'Dowels first.', 'Top bolt last.'));
    expect(spec(b.job)?.routes).toMatchObject([
      { text: 'behind the frame', printed: null },
      { text: 'behind the frame', printed: 'over the bracket' },
    ]);
    const removal = { text: 'Dowels first.', printed: 'Top bolt last.' };
    const fitting = { text: 'Dowels first.', printed: null };
    expect(spec(b.job)?.tip).toEqual({ removal: [removal], fitting: [fitting] });
    const tips = figuresOf(b.job, cover).filter((f) => f.what === 'tip');
    expect(tips).toMatchObject([
      { ...cover, what: 'tip', way: 'removal', ...removal },
      { ...cover, what: 'tip', way: 'fitting', ...fitting },
    ]);
    // Nothing is known of a task, a piece or a hole that the file does not have.
    expect(figuresOf(b.job, { piece: 'lid' })).toEqual([]);
    expect(figuresOf(b.job, { task: 'weeps' })).toEqual([]);
  });

  it('and as printed after all it says nothing of its own again, unless its piece says otherwise', () => {
    const b = bench();
    const hole = { piece: 'cover', hole: '3' };
    b.mark(correct(hole, 'torque', '9 N·m'));
    b.mark(correct(hole, 'torque', '10 N·m, manual 2-17'));
    expect([told(b.job), spec(b.job)?.holes.get('3')?.torque]).toEqual([[], null]);
    b.mark(correct(cover, 'torque', '8 N·m'));
    b.mark(correct(hole, 'torque', '10 N·m, manual 2-17'));
    expect(spec(b.job)?.holes.get('3')?.torque?.quantity?.value).toBe(10);
    expect(told(b.job)).toEqual([['cover', 'torque', '10 N·m, manual 2-17', '8 N·m']]);
  });
});

describe('corrected again', () => {
  const chain = () => {
    const b = bench();
    b.mark(correct(cover, 'torque', '8 N·m'));
    b.mark(correct(cover, 'torque', '9 N·m'));
    return b;
  };

  it('the first printed text stays', () => {
    const { job } = chain();
    expect(told(job)).toEqual([['cover', 'torque', '10 N·m, manual 2-17', '9 N·m']]);
    expect(job.corrections[0]?.id).toBe(job.entries[1]?.id);
    expect(job.entries.map((e) => sayEntry(e, job))).toEqual([
      'torque: 8 N·m (not 10 N·m, manual 2-17, as printed)',
      'torque: 9 N·m (not 10 N·m, manual 2-17, as printed)',
    ]);
  });

  it('back to the printed text it is over', () => {
    const b = chain();
    const back = b.mark(correct(cover, 'torque', '10 N·m, manual 2-17'));
    expect([told(b.job), spec(b.job)]).toEqual([[], b.job.printed.pieces.get('cover')]);
    expect(sayEntry(back, b.job)).toBe('torque: 10 N·m, manual 2-17 after all');
  });

  it('the same truth again is already so, in another spelling of it too', () => {
    const b = chain();
    b.mark(correct(cover, 'sequence', '2 4 1 3'));
    for (const wish of [
      correct(cover, 'torque', ' 9 N·m '),
      correct(cover, 'torque', '9 N·m', '10 N·m'),
      correct(cover, 'sequence', '2, 4, 1, 3'),
    ]) {
      expect(b.ask(wish)).toMatchObject({ ok: true, entry: null });
    }
  });

  it('an undo of the last gives the one before; the first is not taken away from under the second', () => {
    const b = chain();
    const [first, second] = b.entries;
    expect(b.refusal({ do: 'undo', id: first?.id ?? '' })).toEqual({
      code: 'depends',
      ids: [second?.id],
    });
    const undo = b.mark({ do: 'undo' });
    expect(told(b.job)).toEqual([['cover', 'torque', '10 N·m, manual 2-17', '8 N·m']]);
    b.mark({ do: 'undo', id: undo.id });
    expect(told(b.job)).toEqual([['cover', 'torque', '10 N·m, manual 2-17', '9 N·m']]);
    // Said with a reason, the second rests on nothing: what is printed counts.
    b.mark({ do: 'undo', id: first?.id ?? '', because: 'wrong bulletin' });
    expect([told(b.job), spec(b.job)?.torque?.text]).toEqual([[], '10 N·m, manual 2-17']);
  });

  it('marks before and behind a correction are taken back without it', () => {
    const b = bench();
    const out = b.mark({ do: 'out', piece: 'cover', holes: ['1'] });
    b.mark(correct(cover, 'torque', '8 N·m'));
    expect(b.ask({ do: 'undo', id: out.id }).ok).toBe(true);
  });
});

describe('history stays silent', () => {
  const entry = (more: Partial<Entry>): Entry => ({
    at: '2026-04-11T18:25:40+02:00',
    id: 'aaaaaaa1',
    piece: 'cover',
    verb: 'corrected',
    value: 'torque',
    was: '10 N·m, manual 2-17',
    says: '8 N·m',
    ...more,
  });
  const { upper } = readJob(JOB, '');

  it.each<[string, Partial<Entry>]>([
    ['where the file says something else by now', { was: '11 N·m' }],
    ['about a piece that the file has not', { piece: 'lid' }],
    ['about a hole that the file has not', { hole: ['9'] }],
    ['about something a piece has not', { value: 'step' }],
    ['with a truth that cannot be read', { value: 'thick', was: '1/2 in', says: 'about half' }],
    ['with no truth', { says: '' }],
  ])('%s', (_, more) => {
    const made = correctedUpper(upper, [entry(more)]);
    expect(made).toEqual({ upper, corrections: [] });
    expect(made.upper).toBe(upper);
  });

  it('and by hand, without the blanks of the file, it holds', () => {
    const by = entry({ value: 'passes', was: 'part 5 N·m', says: 'part   4 N·m' });
    const { corrections } = correctedUpper(upper, [by, entry({ hole: ['1', '2'], says: '7 N·m' })]);
    expect(corrections.map((c) => [c.hole, c.printed, c.says])).toEqual([
      [undefined, 'part 5 N·m', 'part 4 N·m'],
      ['1', '10 N·m, manual 2-17', '7 N·m'],
      ['2', '10 N·m, manual 2-17', '7 N·m'],
    ]);
  });
});

describe('two diaries that say two things instead of one printed text', () => {
  const line = (id: string, was: string, says: string): Entry => {
    const at = '2026-04-11T18:25:40+02:00';
    return { at, id, piece: 'cover', verb: 'corrected', value: 'torque', was, says };
  };
  const PRINTED = '10 N·m, manual 2-17';
  const { upper } = readJob(JOB, '');
  const rivals = (entries: Entry[]) =>
    silentTruths(upper, livingEntries(entries)).rivals.map(({ entry, holds }) => [
      entry.id,
      holds.says,
    ]);
  const [one, further, other] = [
    line('aaaaaaa1', PRINTED, '8 N·m'),
    line('aaaaaaa2', '8 N·m', '9 N·m'),
    line('bbbbbbb1', PRINTED, '7 N·m'),
  ];

  it('the first holds, and the other is told, until one is taken back or they agree', () => {
    expect(rivals([one, other])).toEqual([['bbbbbbb1', '8 N·m']]);
    expect(rivals([one, further, other])).toEqual([['bbbbbbb1', '9 N·m']]);
    expect(rivals([other, one, further])).toEqual([['aaaaaaa1', '7 N·m']]);
    const undo: Entry = { ...one, id: 'ccccccc1', verb: 'undo', value: 'bbbbbbb1' };
    expect(rivals([one, other, undo])).toEqual([]);
    expect(rivals([one, other, line('ccccccc2', '8 N·m', '7 N·m')])).toEqual([]);
  });

  it('one diary alone, a line that stands twice, and a printed text that was changed are no such thing', () => {
    expect(rivals([one, further])).toEqual([]);
    expect(rivals([one, further, one])).toEqual([]);
    expect(rivals([line('aaaaaaa1', '11 N·m', '8 N·m'), other])).toEqual([]);
  });
});

describe('what can be corrected', () => {
  it('in the order of a job file, each as it counts and as it is printed', () => {
    const b = bench();
    b.mark(correct(cover, 'caution', 'Gloves.'));
    b.mark(correct({ piece: 'cover', hole: '4' }, 'thick', '38'));
    const all = figuresOf(b.job, { piece: 'cover' });
    expect(
      all
        .map((f) => [f.hole ?? '', f.what, f.way ?? '', f.text, f.printed ?? ''])
        .map((l) => l.join('|')),
    ).toEqual([
      '|torque||10 N·m, manual 2-17|',
      '|into||cast aluminium|',
      '|thick||1/2 in|',
      '|thread||0..14|',
      '|joint||new gasket|',
      '|joint||dry|',
      '|loose||2 dowels|',
      '|loose||1 washer|',
      '|caution||Gloves.|Keep fingers off the edge.',
      '|tip|removal|Top bolt last.|',
      '|tip|fitting|Dowels first.|',
      '|marks||dot at 12|',
      '|routes||behind the frame|',
      '|routes||over the bracket|',
      '|sequence||1 3 2 4|',
      '|passes||snug|',
      '|passes||part 5 N·m|',
      '|passes||full 10 N·m|',
      '|takes||20 min|',
      '|note||printed in 1997|',
      '2|turns||15|',
      '2|note||oil passage|',
      '4|torque||12 N·m|',
      '4|thick||38|40',
      '4|thread||3..19|',
      '4|proud||3/8 in|',
      '4|into||steel|',
    ]);
    expect(figuresOf(b.job, { task: 'oil' }).map((f) => f.what)).toEqual([
      'step',
      'limit',
      'when',
      'takes',
      'note',
    ]);
    expect([figuresOf(b.job, { piece: 'lid' }), figuresOf(b.job, { task: 'lid' })]).toEqual([
      [],
      [],
    ]);
  });

  it.each<[Correctable, string, boolean]>([
    ['torque', 'as tight as it goes', true],
    ['thick', '14', true],
    ['thick', '1-1/2 in', true],
    ['thick', 'a bit', false],
    ['proud', '-3', false],
    ['thread', '3..19', true],
    ['thread', '19..3', false],
    ['turns', '7.5', true],
    ['turns', 'many', false],
    ['passes', 'angle 90°', true],
    ['passes', 'again after 50 km', true],
    ['passes', 'gently', false],
    ['sequence', '1 4 2 3', true],
    ['sequence', '1 1 2', false],
    ['sequence', 'round', false],
    ['caution', ' ', false],
  ])('%s can be %s: %s', (what, text, good) => {
    expect(truthFault(what, text) === null).toBe(good);
  });
});

it('any order of corrections and undos, mark after mark, is the fold of them all', () => {
  const { upper } = readJob(JOB, '');
  const printed = JSON.stringify([...upper.pieces, ...upper.tasks]);
  const ids = Array.from({ length: 14 }, (_, i) => `entry${`${i}`.padStart(3, '0')}`);
  const texts = ['10 N·m, manual 2-17', '8 N·m', '9 N·m', '12 N·m'];
  const at = '2026-04-11T18:25:40+02:00';
  const made = fc.oneof(
    fc.record({
      verb: fc.constant('corrected' as const),
      value: fc.constant('torque'),
      piece: fc.constant('cover'),
      hole: fc.option(fc.subarray(['1', '4'], { minLength: 1 }), { nil: undefined }),
      was: fc.constantFrom(...texts),
      says: fc.constantFrom(...texts),
    }),
    fc.record({
      verb: fc.constant('corrected' as const),
      value: fc.constantFrom('loose', 'caution', 'limit'),
      piece: fc.constant('cover'),
      was: fc.constantFrom('2 dowels', '1 washer', 'Keep fingers off the edge.'),
      says: fc.constantFrom('2 dowels', '1 washer', 'a'),
    }),
    fc.record({ verb: fc.constant('undo' as const), value: fc.constantFrom(...ids) }),
    fc.record({
      verb: fc.constant('tight' as const),
      value: fc.constant('full'),
      piece: fc.constant('cover'),
    }),
  );
  fc.assert(
    fc.property(fc.array(made, { maxLength: 14 }), (all) => {
      const entries = all.map(({ ...e }, i): Entry => {
        const clean = Object.fromEntries(Object.entries(e).filter(([, v]) => v !== undefined));
        return { ...clean, at, id: ids[i] ?? '' } as Entry;
      });
      const job = fold(upper, entries);
      expect(job.printed).toBe(upper);
      // What is printed stays as it is; what is no longer living says nothing.
      expect(JSON.stringify([...upper.pieces, ...upper.tasks])).toBe(printed);
      expect(fold(upper, livingEntries(entries)).corrections).toEqual(job.corrections);
      for (const c of job.corrections) {
        expect(c.says).not.toBe(c.printed);
        const of = { ...(c.piece ? { piece: c.piece } : {}), ...(c.hole ? { hole: c.hole } : {}) };
        expect(figuresOf(job, { piece: 'cover' })).toContainEqual(
          expect.objectContaining({ ...of, what: c.what, text: c.says }),
        );
      }
      if (job.corrections.length === 0 && !entries.some((e) => e.hole))
        expect(job.upper).toEqual(upper);
    }),
    { numRuns: 2000 },
  );
});
