/**
 * What is true counts wherever a figure is used: a job with a correction asks and answers as a job whose file says
 * so from the start, and shows the printed text behind the true one.
 */

import { describe, expect, it } from 'vitest';
import { repair } from '../../src/bolt/fit/repair.ts';
import { fitOfPiece } from '../../src/job/fold/fit-of.ts';
import { fold } from '../../src/job/fold/fold.ts';
import { placeOf } from '../../src/job/fold/place.ts';
import { judge } from '../../src/job/judge/judge.ts';
import { readJob } from '../../src/job/read.ts';
import type { Correctable, Entry, Job, Wish } from '../../src/model/types.ts';
import { rounds as passes } from '../../src/piece/sequence/rounds.ts';

import { sequence } from '../../src/piece/sequence/sequence.ts';
import { buyList } from '../../src/plan/buy/list.ts';
import { gate } from '../../src/plan/gates/gate.ts';
import { sortedItems } from '../../src/plan/gates/gate-now.ts';
import { backAfter } from '../../src/plan/next/back.ts';
import { nextStep } from '../../src/plan/next/next.ts';
import { plan } from '../../src/plan/plan.ts';
import { testList } from '../../src/plan/tests/testlist.ts';
import { withinMinutes } from '../../src/plan/twenty.ts';

const NOW = '2026-05-02T10:00:00+02:00';
const FILE = `putback: 1
job: Cover weeps
bolts: {S: "M8x25 flange, 12 mm", L: "M8x55 flange, 12 mm"}
pieces:
  cover:
    bolts: S S S L
    torque: 10 N·m, manual 2-17
    into: cast aluminium
    thick: 12
    thread: 0..14
    joint: new gasket, dry
    loose: 2 dowels
    caution: {fitting: Keep fingers off the edge., removal: Top bolt last.}
    marks: dot at 12
    routes: behind the frame
    sequence: 1 3 2 4
    passes: [snug, part 5 N·m, full]
    takes: 20 min
    holes: {2: {note: oil passage}}
  lid: {bolts: S L, takes: 6 min, holes: {1: {turns: 15}}}
tasks:
  drain: {do: Raise the front, before: cover off}
  cure: {wait: "1 h, sealant cures", after: cover on}
  oil: {do: Fill with 1.9 l of oil, after: cover on, takes: 5 min}
  weep: {test: Five minutes at idle, limit: no oil at the edge, after: oil, when: hot}
diary:
`;

interface Case {
  of: { piece?: string; hole?: string; task?: string };
  what: Correctable;
  truth: string;
  /** The same in the file. */
  from: string;
  to: string;
}
const of = { piece: 'cover' };
const CASES: Case[] = [
  {
    of,
    what: 'torque',
    truth: '8 N·m, bulletin 12',
    from: '10 N·m, manual 2-17',
    to: '8 N·m, bulletin 12',
  },
  { of, what: 'torque', truth: 'by feel', from: '10 N·m, manual 2-17', to: 'by feel' },
  { of, what: 'into', truth: 'steel', from: 'cast aluminium', to: 'steel' },
  { of, what: 'thick', truth: '18', from: 'thick: 12', to: 'thick: 18' },
  { of, what: 'thread', truth: '2..9', from: '0..14', to: '2..9' },
  {
    of,
    what: 'joint',
    truth: 'sealant, open 10 min',
    from: 'new gasket, dry',
    to: 'sealant, open 10 min',
  },
  { of, what: 'loose', truth: '3 dowels', from: '2 dowels', to: '3 dowels' },
  { of, what: 'caution', truth: 'Gloves', from: 'Keep fingers off the edge.', to: 'Gloves' },
  { of, what: 'marks', truth: 'dot at 6', from: 'dot at 12', to: 'dot at 6' },
  { of, what: 'routes', truth: 'over it', from: 'behind the frame', to: 'over it' },
  { of, what: 'sequence', truth: '4 2 1 3', from: '1 3 2 4', to: '4 2 1 3' },
  { of, what: 'passes', truth: 'part 50 %', from: 'part 5 N·m', to: 'part 50 %' },
  { of, what: 'takes', truth: '90 min', from: '20 min', to: '90 min' },
  { of: { piece: 'lid', hole: '1' }, what: 'turns', truth: '5', from: 'turns: 15', to: 'turns: 5' },
  {
    of: { ...of, hole: '2' },
    what: 'torque',
    truth: '12 N·m',
    from: '{note: oil passage',
    to: '{torque: 12 N·m, note: oil passage',
  },
  {
    of: { task: 'drain' },
    what: 'step',
    truth: 'Drain the oil',
    from: 'Raise the front',
    to: 'Drain the oil',
  },
  {
    of: { task: 'cure' },
    what: 'step',
    truth: '24 h, sealant cures',
    from: '1 h, sealant cures',
    to: '24 h, sealant cures',
  },
  {
    of: { task: 'oil' },
    what: 'takes',
    truth: '150 min',
    from: 'takes: 5 min',
    to: 'takes: 150 min',
  },
  { of: { task: 'weep' }, what: 'limit', truth: 'dry', from: 'no oil at the edge', to: 'dry' },
  { of: { task: 'weep' }, what: 'when', truth: 'next day', from: 'hot', to: 'next day' },
];

function marked(text: string, wishes: readonly Wish[]): Job {
  const { upper } = readJob(text, '');
  let entries: Entry[] = [];
  for (const [n, wish] of wishes.entries()) {
    const id = `id${`${n}`.padStart(6, '0')}`;
    const verdict = judge(fold(upper, entries), { ...wish, because: 'test' }, { at: NOW, id });
    if (!verdict.ok || !verdict.entry) throw new Error(JSON.stringify(verdict));
    entries = [...entries, verdict.entry];
  }
  return fold(upper, entries);
}

/** Every answer that a file's figures go into, without the printed texts behind the true ones. */
function answers(job: Job): unknown {
  const piece = job.pieces.get('cover');
  if (!piece) throw new Error('no cover');
  const names = piece.holes.map((h) => h.name);
  const order = sequence(piece.spec, job.upper.kinds, names, []);
  const fits = [...job.pieces.values()].flatMap((p) => {
    const fit = fitOfPiece(job, p);
    return ['S', 'L'].flatMap((kind) => p.holes.map((hole) => fit(kind, hole.name)));
  });
  const moments = (['prying', 'sealing', 'closing'] as const).map(
    (m) => gate(job, m, 'cover', NOW).items,
  );
  const all = {
    order,
    passes: passes(piece.spec, job.upper.kinds, order.tighten, names),
    fits,
    mended: piece.holes.map((hole) => repair({ place: placeOf(piece, hole, job.upper.kinds) })),
    next: nextStep(job),
    plan: plan(job, NOW),
    back: backAfter(job, NOW),
    tests: testList(job, NOW),
    buys: buyList(job, NOW),
    within: withinMinutes(job, 30, NOW),
    moments,
    where: [...job.pieces.values()].map((p) => [p.where, p.holes]),
    start: gate(job, 'start', null, NOW).items,
  };
  const bare = JSON.stringify(all, (key, value) => (key === 'printed' ? null : value));
  return JSON.parse(bare.replaceAll(/ \(not [^()]*, as printed\)/g, ''));
}

/** Nothing done, all away, all back by fingers and once round. */
const STANDS: [string, Wish[]][] = [
  ['before it comes off', []],
  [
    'while it is off',
    [
      { do: 'out', piece: 'cover' },
      { do: 'off', piece: 'cover' },
    ],
  ],
  [
    'while it goes back',
    [
      { do: 'out', piece: 'cover' },
      { do: 'off', piece: 'cover' },
      { do: 'in', piece: 'cover', hand: { kind: 'S' } },
      { do: 'in', piece: 'cover', hand: { kind: 'L' } },
      { do: 'tight', piece: 'cover', pass: 'snug' },
    ],
  ],
];

describe.each(CASES)('$what $truth', ({ of, what, truth, from, to }) => {
  const wish: Wish = {
    do: 'correct',
    ...of,
    what,
    truth,
    ...(what === 'caution' ? { printed: 'Keep' } : what === 'passes' ? { printed: 'part' } : {}),
  };
  const direct = FILE.replace(from, to);
  // A mark at the same place that says nothing of it: what was marked last is asked for, too.
  const mark: Wish = { do: 'note', ...(of.piece ? { piece: of.piece } : {}), text: 'x' };

  it.each(STANDS)('%s it counts as if the file said so', (_, marks) => {
    expect(direct).not.toBe(FILE);
    const late = marked(FILE, [...marks, wish]);
    const said = answers(late);
    expect(said).toEqual(answers(marked(direct, [...marks, mark])));
    expect(late.corrections).toHaveLength(1);
  });

  it('and something is asked or answered otherwise than with what is printed', () => {
    const differs = STANDS.some(([, marks]) => {
      const printed = JSON.stringify(answers(marked(FILE, [...marks, mark])));
      return printed !== JSON.stringify(answers(marked(FILE, [...marks, wish])));
    });
    expect(differs).toBe(true);
  });
});

describe('both are shown, the printed text behind the true one', () => {
  const after = (wish: Wish, marks: readonly Wish[] = []) => marked(FILE, [...marks, wish]);
  const correct = (what: Correctable, truth: string, task?: string): Wish => ({
    do: 'correct',
    ...(task ? { task } : { piece: 'cover' }),
    what,
    truth,
    ...(what === 'caution' ? { printed: 'Keep' } : what === 'passes' ? { printed: 'part' } : {}),
  });
  const says = (job: Job, moment: 'prying' | 'sealing' | 'closing') =>
    gate(job, moment, 'cover', NOW).items.map((i) => i.say);
  const [, , [, onAgain]] = STANDS as [unknown, unknown, [string, Wish[]]];

  it.each<[string, (job: Job) => readonly string[], Wish, string]>([
    [
      'marks',
      (j) => says(j, 'prying'),
      correct('marks', 'dot at 6'),
      'Marked: dot at 6 (not dot at 12, as printed).',
    ],
    [
      'routes',
      (j) => says(j, 'prying'),
      correct('routes', 'over it'),
      'Seen how it runs: over it (not behind the frame, as printed).',
    ],
    [
      'loose',
      (j) => says(j, 'prying'),
      correct('loose', '3 dowels'),
      'Falls out or stays in: 3 dowels (not 2 dowels, as printed).',
    ],
    [
      'loose, counted',
      (j) => says(j, 'sealing'),
      correct('loose', '3 dowels'),
      'Counted and in its place: 3 dowels (not 2 dowels, as printed).',
    ],
    [
      'caution',
      (j) => says(j, 'sealing'),
      correct('caution', 'Gloves.'),
      'Gloves (not Keep fingers off the edge, as printed)',
    ],
    [
      'joint',
      (j) => says(j, 'sealing'),
      correct('joint', 'clean; no paste'),
      'Joint: no paste (not new gasket, dry, as printed).',
    ],
    [
      'wrench',
      (j) => says(j, 'sealing'),
      correct('torque', '8 N·m, bulletin 12'),
      'Wrench set: part 5 N·m, then full 8 N·m (not 10 N·m, manual 2-17, as printed).',
    ],
    [
      'step',
      (j) => plan(j, NOW).canDo.map((c) => c.say),
      correct('step', 'Drain it', 'drain'),
      'Drain it (not Raise the front, as printed).',
    ],
  ])('%s', (_, shown, wish, said) => {
    expect(shown(after(wish))).toContain(said);
  });

  it.each<[Wish, string]>([
    [
      correct('passes', 'part 4 N·m'),
      'Cover: tighten 1, part, 4 N·m (not part 5 N·m, as printed).',
    ],
    [correct('passes', 'part 50 %'), 'Cover: tighten 1, part, 5 N·m (not part 5 N·m, as printed).'],
  ])('the next bolt, %#', (wish, said) => {
    expect(nextStep(after(wish, onAgain))?.say).toBe(said);
  });

  it('the next bolt at full torque', () => {
    const full: Wish[] = [...onAgain, { do: 'tight', piece: 'cover', pass: 'part' }];
    expect(nextStep(after(correct('torque', '8 N·m'), full))?.say).toBe(
      'Cover: tighten 1, full, 8 N·m (not 10 N·m, manual 2-17, as printed).',
    );
    // What is set on the wrench goes into the diary with the mark.
    const job = marked(FILE, [
      ...full,
      correct('torque', '8 N·m'),
      { do: 'tight', piece: 'cover' },
    ]);
    expect(job.entries.at(-1)).toMatchObject({ verb: 'tight', value: 'full', set: '8 N·m' });
  });

  it.each([
    [
      'a share of the torque',
      'passes: [snug, part 50 %, full]',
      '10 N·m, manual 2-17',
      '8 N·m',
      'Cover: tighten 1, part, 4 N·m (not 50 % of 10 N·m, manual 2-17, as printed).',
    ],
    [
      'a stage of it',
      '',
      '5 N·m, then 10 N·m',
      '4 N·m, then 8 N·m',
      'Cover: tighten 1, part, 4 N·m (not 5 N·m, as printed).',
    ],
    [
      'a stage that is the same in both',
      '',
      '5 N·m, then 10 N·m',
      '5 N·m, then 8 N·m',
      'Cover: tighten 1, part, 5 N·m.',
    ],
    [
      'a stage, where the usual share is printed',
      '',
      '10 N·m, manual 2-17',
      '4 N·m, then 8 N·m',
      'Cover: tighten 1, part, 4 N·m (not 50 % of 10 N·m, manual 2-17, as printed).',
    ],
    [
      'a stage more than are printed',
      '',
      '5 N·m, then 10 N·m',
      '4 N·m, then 6 N·m, then 8 N·m',
      'Cover: tighten 1, part 2, 6 N·m (not 5 N·m, then 10 N·m, as printed).',
      'part',
    ],
  ])('the next bolt at %s', (_, rows, printed, truth, said, done = 'snug') => {
    const file = FILE.replace('passes: [snug, part 5 N·m, full]', rows).replace(
      'torque: 10 N·m, manual 2-17',
      `torque: ${printed}`,
    );
    const job = marked(file, [
      ...onAgain.filter((wish) => wish.do !== 'tight'),
      correct('torque', truth),
      { do: 'tight', piece: 'cover', pass: done },
    ]);
    expect(nextStep(job)?.say).toBe(said);
  });

  it('a gate strikes what is printed where the item comes from, and says the rest in words', () => {
    const torque = (hole?: string): Wish => ({
      ...correct('torque', hole === undefined ? '8 N·m' : '9 N·m'),
      ...(hole === undefined ? {} : { hole }),
    });
    // The hole says the same as its piece did: only the piece's own is shown beside the words.
    const job = marked(FILE, [...onAgain, torque('3'), torque()]);
    const cover = job.pieces.get('cover') ?? null;
    const [wrench] = sortedItems(job, 'sealing', cover, NOW).filter((i) => i.item.key === 'wrench');
    expect([wrench?.item.say, wrench?.printed]).toEqual([
      'Wrench set: part 5 N·m, then full 8 N·m. 3 takes 9 N·m (not 10 N·m, manual 2-17, as printed).',
      ['10 N·m, manual 2-17'],
    ]);
  });

  it('of two cautions that say the same by now each has its own print', () => {
    const file = FILE.replace(
      'caution: {fitting: Keep fingers off the edge., removal: Top bolt last.}',
      'caution: {fitting: [Gloves., Keep fingers off the edge.]}',
    );
    const job = marked(file, [...onAgain, correct('caution', 'Gloves.')]);
    const cover = job.pieces.get('cover') ?? null;
    const items = sortedItems(job, 'sealing', cover, NOW).filter((i) =>
      i.item.key.startsWith('caution'),
    );
    expect(items.map((i) => [i.item.say, i.printed])).toEqual([
      ['Gloves.', []],
      ['Gloves', ['Keep fingers off the edge.']],
    ]);
  });

  it('a hole with a torque of its own is told and noted with that one', () => {
    const own: Wish = {
      do: 'correct',
      piece: 'cover',
      hole: '3',
      what: 'torque',
      truth: '12 N·m, bulletin 3',
    };
    const full: Wish[] = [
      ...onAgain,
      own,
      { do: 'tight', piece: 'cover', pass: 'part' },
      { do: 'tight', piece: 'cover', holes: ['1'], pass: 'full' },
    ];
    expect(nextStep(marked(FILE, full))?.say).toBe(
      'Cover: tighten 3, full, 12 N·m (not 10 N·m, manual 2-17, as printed).',
    );
    const set = (holes: string[]) =>
      marked(FILE, [...full, { do: 'tight', piece: 'cover', holes, pass: 'full' }]).entries.at(-1)
        ?.set;
    // Of several at different torques no one figure is true.
    expect([set(['3']), set(['2']), set(['2', '4']), set(['2', '3'])]).toEqual([
      '12 N·m',
      '10 N·m',
      '10 N·m',
      undefined,
    ]);
  });
});
