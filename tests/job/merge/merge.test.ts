import { describe, expect, test } from 'vitest';
import { mergeJob, unite } from '../../../src/job/merge/merge.ts';
import { interleave } from '../../../src/job/merge/order.ts';
import { secondsOf } from '../../../src/model/time.ts';
import type { Entry } from '../../../src/model/types.ts';

const at = (minute: number) => `2026-05-02T10:${String(minute).padStart(2, '0')}:00+02:00`;
const line = (minute: number, id: string, rest = 'piece: cover, hole: 1, in: S') =>
  `  - {at: ${at(minute)}, id: ${id}, ${rest}}\n`;
const note = (minute: number, id: string, value = 'x'): Entry => ({
  at: at(minute),
  id,
  verb: 'note',
  value,
});
const ids = (entries: Entry[]) => entries.map((e) => e.id).join(' ');

const UPPER = `putback: 1
job: Left cover weeps oil

# thread and length
bolts:
  S: M6x25
  M: M6x35

pieces:
  lever: {bolts: S, marks: dot on the shaft}
  cover:
    name: Left cover
    bolts: S S S M
    torque: 10 N·m, manual 2-17
    map: |
      1 . 2
      . . .
      4 . 3
`;
const file = (upper = UPPER, ...entries: string[]) => `${upper}\ndiary:\n${entries.join('')}`;
const merge = (base: string, ours: string, theirs: string) => mergeJob(base, ours, theirs);
const changed = (from: string, to: string) => {
  const text = UPPER.replace(from, to);
  if (text === UPPER) throw new Error(`not there: ${from}`);
  return text;
};

test('two diaries become one, in the order of time', () => {
  const ours = [note(1, 'a'), note(3, 'c'), note(5, 'e')];
  const theirs = [note(2, 'b'), note(4, 'd')];
  expect(ids(unite([], ours, theirs))).toBe('a b c d e');
  expect(ids(unite([], theirs, ours))).toBe('a b c d e');
});

test('a clock set back does not turn the order of one bench round', () => {
  const ours = [note(1, 'a'), note(50, 'b'), note(2, 'c')];
  expect(ids(unite([], ours, [note(30, 'x')]))).toBe('a x b c');
  expect(ids(unite([], ours, [note(30, 'x'), note(3, 'y')]))).toBe('a x y b c');
});

test('what both have stands once, and between what each had around it', () => {
  const base = [note(1, 'a'), note(9, 'z')];
  expect(ids(unite(base, [...base, note(2, 'b')], [...base, note(3, 'c')]))).toBe('a z b c');
});

test('an entry changed on one side is the changed one; changed on both it is there twice', () => {
  const base = [note(1, 'a', 'old')];
  expect(unite(base, base, [note(1, 'a', 'new')])).toEqual([note(1, 'a', 'new')]);
  expect(unite(base, [note(1, 'a', 'new')], base)).toEqual([note(1, 'a', 'new')]);
  expect(unite(base, [note(1, 'a', 'q')], [note(1, 'a', 'p')])).toEqual([
    note(1, 'a', 'p'),
    note(1, 'a', 'q'),
  ]);
});

test('orders that contradict each other still give one order, with nothing lost', () => {
  const text = (a: string, b: string) =>
    interleave(
      [...a],
      [...b],
      (x) => x,
      (x, y) => (x < y ? -1 : 1),
    ).join('');
  expect(text('abc', 'cba')).toBe(text('cba', 'abc'));
  expect([...text('abcx', 'cbay')].toSorted().join('')).toBe('abcxy');
});

test.each([
  ['2026-05-02T10:11:05+02:00', '2026-05-02T08:11:05Z'],
  ['2024-02-29T23:59:59-00:30', '2024-03-01T00:29:59Z'],
  ['1999-12-31T23:00:00-01:00', '2000-01-01T00:00:00.000Z'],
  ['2026-05-02T10:11:05.250+00:00', '2026-05-02T10:11:05.25Z'],
])('%s and %s are one moment', (a, b) => {
  expect(secondsOf(a)).toBe(secondsOf(b));
  expect(secondsOf(a)).toBe(Date.parse(a) / 1000);
});

test('marks of two benches stand together, and every line keeps its bytes', () => {
  const odd = `  -   { at: ${at(2)}, id: "bbbbbbb2" , note: "by hand" }   # mine\n`;
  expect(
    merge(file(), file(UPPER, line(1, 'aaaaaaa1'), line(3, 'ccccccc3')), file(UPPER, odd)),
  ).toEqual({
    text: file(UPPER, line(1, 'aaaaaaa1'), odd, line(3, 'ccccccc3')),
    clean: true,
  });
});

test('two bolts in one hole are both written down; the map shows the conflict', () => {
  const ours = file(UPPER, line(1, 'aaaaaaa1', 'piece: cover, hole: 4, in: M'));
  const theirs = file(UPPER, line(2, 'bbbbbbb2', 'piece: cover, hole: 4, in: S'));
  const { text, clean } = merge(file(), ours, theirs);
  expect(clean).toBe(true);
  expect(text).toContain('aaaaaaa1');
  expect(text).toContain('bbbbbbb2');
});

test('an entry that one side took out is kept', () => {
  const both = file(UPPER, line(1, 'aaaaaaa1'), line(2, 'bbbbbbb2'));
  expect(merge(both, file(UPPER, line(1, 'aaaaaaa1')), `${both}${line(3, 'ccccccc3')}`).text).toBe(
    file(UPPER, line(1, 'aaaaaaa1'), line(2, 'bbbbbbb2'), line(3, 'ccccccc3')),
  );
});

test('comments go with the entry above them', () => {
  const base = file(UPPER, line(1, 'aaaaaaa1'));
  const ours = `${base}  # soak it\n${line(5, 'eeeeeee5')}`;
  const theirs = `${base}${line(3, 'ccccccc3')}  # said the neighbour\n`;
  expect(merge(base, ours, theirs).text).toBe(
    `${base}  # soak it\n${line(3, 'ccccccc3')}  # said the neighbour\n${line(5, 'eeeeeee5')}`,
  );
});

test('an entry in several lines stays in one piece', () => {
  const block = `  - at: ${at(2)}\n    id: bbbbbbb2\n    note: |\n      one\n\n      # two\n`;
  const { text } = merge(
    file(),
    file(UPPER, line(1, 'aaaaaaa1'), line(4, 'ddddddd4')),
    file(UPPER, block),
  );
  expect(text).toBe(file(UPPER, line(1, 'aaaaaaa1'), block, line(4, 'ddddddd4')));
});

test.each<[string, [string, string], [string, string], string[]]>([
  [
    'different keys of one piece',
    ['Left cover\n', 'Alternator cover\n'],
    ['10 N·m, manual 2-17', '12 N·m, manual 3-4'],
    ['Alternator cover', '12 N·m'],
  ],
  [
    'different holes of one row',
    ['S S S M', 'S L S M'],
    ['S S S M', 'S S S M+clip'],
    ['bolts: S L S M+clip\n'],
  ],
  [
    'different keys of a piece on one line',
    ['bolts: S,', 'bolts: M,'],
    ['dot on the shaft', 'two dots'],
    ['lever: {bolts: M, marks: two dots}'],
  ],
  [
    'a key and the comment above another',
    ['M6x35', 'M6x40'],
    ['# thread and length', '# thread, length, head'],
    ['M: M6x40', '# thread, length, head'],
  ],
  [
    'a new kind on each side',
    ['  M: M6x35\n', '  M: M6x35\n  L: M6x55\n'],
    ['  M: M6x35\n', '  M: M6x35\n  P: M6x20\n'],
    ['  L: M6x55\n  P: M6x20\n'],
  ],
  [
    'a piece taken out, another changed',
    ['  lever: {bolts: S, marks: dot on the shaft}\n', ''],
    ['Left cover\n', 'Lid\n'],
    ['name: Lid'],
  ],
])('%s, changed on two benches, come together', (_, one, two, has) => {
  const [ours, theirs] = [changed(...one), changed(...two)];
  const there = merge(file(), file(ours), file(theirs));
  const back = merge(file(), file(theirs), file(ours));
  expect(there.clean).toBe(true);
  expect(back).toEqual(there);
  for (const text of has) expect(there.text).toContain(text);
});

test('different holes of a row, spelled in two ways, come together in the spelling of ours', () => {
  const list = file(changed('bolts: S S S M', 'bolts: [S, L, S, M]'));
  const words = file(changed('bolts: S S S M', 'bolts: S S S M+clip'));
  expect(merge(file(), list, words).text).toBe(
    file(changed('bolts: S S S M', 'bolts: [S, L, S, M+clip]')),
  );
  expect(merge(file(), words, list).text).toBe(
    file(changed('bolts: S S S M', 'bolts: S L S M+clip')),
  );
});

test('the same key changed on two benches is left between git’s markers, the diary united all the same', () => {
  const ours = file(changed('10 N·m', '12 N·m'), line(1, 'aaaaaaa1'));
  const theirs = file(changed('10 N·m', '9 N·m'), line(2, 'bbbbbbb2'));
  const upper = changed(
    '    torque: 10 N·m, manual 2-17\n',
    '<<<<<<< ours\n    torque: 12 N·m, manual 2-17\n=======\n    torque: 9 N·m, manual 2-17\n>>>>>>> theirs\n',
  );
  expect(merge(file(), ours, theirs)).toEqual({
    text: file(upper, line(1, 'aaaaaaa1'), line(2, 'bbbbbbb2')),
    clean: false,
  });
});

test('one hole of a row changed on two benches differs', () => {
  const { text, clean } = merge(
    file(),
    file(changed('S S S M', 'S S S L')),
    file(changed('S S S M', 'S S S S')),
  );
  expect(clean).toBe(false);
  expect(text).toContain(
    '<<<<<<< ours\n    bolts: S S S L\n=======\n    bolts: S S S S\n>>>>>>> theirs\n',
  );
});

test('a piece taken out on one bench and changed on the other differs', () => {
  const lever = '  lever: {bolts: S, marks: dot on the shaft}\n';
  const { text, clean } = merge(
    file(),
    file(changed(lever, '')),
    file(changed('dot on', 'two dots on')),
  );
  expect(clean).toBe(false);
  expect(text).toContain(
    '<<<<<<< ours\n=======\n  lever: {bolts: S, marks: two dots on the shaft}\n>>>>>>> theirs\n',
  );
});

test('a picture changed on two benches is given to the merge by lines', () => {
  const asked: string[][] = [];
  const lines = (...texts: [string, string, string]) => {
    asked.push(texts);
    return { text: '    map: by lines\n', clean: true };
  };
  const result = mergeJob(
    file(),
    file(changed('1 . 2', '1 2 .')),
    file(changed('4 . 3', '. 4 3')),
    lines,
  );
  expect(result.text).toBe(file(`${UPPER.split('    map:')[0]}    map: by lines\n`));
  expect(asked).toEqual([
    [
      '1 . 2\n      . . .\n      4 . 3',
      '1 2 .\n      . . .\n      4 . 3',
      '1 . 2\n      . . .\n      . 4 3',
    ].map((m) => `    map: |\n      ${m}\n`),
  ]);
});

test('a file that cannot be read by keys is merged by lines, its diary still by entry', () => {
  const broken = (text: string) => text.replace('job:', '<<<<<<< left from last time\njob:');
  const lines = (_: string, ours: string) => ({ text: ours, clean: false });
  const result = mergeJob(
    file(),
    broken(file(UPPER, line(2, 'bbbbbbb2'))),
    file(changed('10 N', '12 N'), line(1, 'aaaaaaa1')),
    lines,
  );
  expect(result).toEqual({
    text: broken(file(UPPER, line(1, 'aaaaaaa1'), line(2, 'bbbbbbb2'))),
    clean: false,
    unreadable: ['ours'],
  });
});

test('line endings, byte order mark and last newline are ours', () => {
  const dress = (text: string) => `\uFEFF${text.replaceAll('\n', '\r\n').replace(/\r\n$/, '')}`;
  const [base, ours, theirs] = [
    file(),
    file(UPPER, line(1, 'aaaaaaa1')),
    file(UPPER, line(2, 'bbbbbbb2')),
  ];
  const whole = file(UPPER, line(1, 'aaaaaaa1'), line(2, 'bbbbbbb2'));
  expect(merge(dress(base), dress(ours), dress(theirs)).text).toBe(dress(whole));
  expect(merge(base, dress(ours), theirs).text).toBe(dress(whole));
  expect(merge(base, ours, dress(theirs)).text).toBe(dress(whole));
});

test('diaries indented in two ways become one list', () => {
  const theirs = file(UPPER, line(2, 'bbbbbbb2')).replace('  - {', '      - {');
  expect(merge(file(), file(UPPER, line(1, 'aaaaaaa1')), theirs).text).toBe(
    file(UPPER, line(1, 'aaaaaaa1'), line(2, 'bbbbbbb2')),
  );
});

test('an empty list, no diary at all, and a diary in the middle', () => {
  const one = line(1, 'aaaaaaa1');
  expect(merge('job: x\ndiary: []\n', `job: x\ndiary:\n${one}`, 'job: y\ndiary: []\n').text).toBe(
    `job: y\ndiary:\n${one}`,
  );
  expect(
    merge('job: x\n', `job: x\ndiary:\n${one}`, `job: x\ndiary:\n${line(2, 'bbbbbbb2')}`).text,
  ).toBe(`job: x\ndiary:\n${one}${line(2, 'bbbbbbb2')}`);
  const middle = (entries: string) =>
    `job: x\ndiary:\n${entries}\n# what is to buy\nbuy:\n  gasket: {what: a}\n`;
  expect(merge(middle(''), middle(one), middle(line(2, 'bbbbbbb2'))).text).toBe(
    middle(one + line(2, 'bbbbbbb2')),
  );
});

test('two files with nothing in common keep both diaries', () => {
  const { text, clean } = merge(
    '',
    `job: x\ndiary:\n${line(1, 'aaaaaaa1')}`,
    `job: y\ndiary:\n${line(2, 'bbbbbbb2')}`,
  );
  expect(clean).toBe(false);
  expect(text).toBe(
    `<<<<<<< ours\njob: x\n=======\njob: y\n>>>>>>> theirs\ndiary:\n${line(1, 'aaaaaaa1')}${line(2, 'bbbbbbb2')}`,
  );
});

describe('a side that is no readable job', () => {
  const job = file(UPPER, line(1, 'aaaaaaa1'));
  const more = file(UPPER, line(1, 'aaaaaaa1'), line(2, 'aaaaaaa2'));
  /** All of ours or of theirs, and nothing of the other: as git does where one side did not change. */
  const takesOne = (base: string, ours: string, theirs: string) => ({
    text: ours === base ? theirs : ours,
    clean: true,
  });

  test.each([
    ['blank', ''],
    ['of blanks', ' \n\n'],
    ['of comments', '# nothing\n'],
    ['broken', '{ broken\n'],
    ['a list', '- a\n'],
    ['cut off in a text', `${UPPER}diary:\n  - {at: "2026`],
  ])('%s: both are left between markers', (_, odd) => {
    for (const ours of [job, more]) {
      const merged = mergeJob(job, ours, odd, takesOne);
      expect(merged).toMatchObject({ clean: false, unreadable: ['theirs'] });
      expect(merged.text).toContain('<<<<<<< ours\n');
      expect(merged.text).toContain(ours);
      const turned = mergeJob(job, odd, ours, takesOne);
      expect(turned).toMatchObject({ clean: false, unreadable: ['ours'] });
      expect(turned.text).toContain(ours);
    }
  });

  test('both: nothing of either is dropped', () => {
    const merged = mergeJob(job, '{ a\n', '{ b\n', takesOne);
    expect(merged).toEqual({
      text: '<<<<<<< ours\n{ a\n=======\n{ b\n>>>>>>> theirs\n',
      clean: false,
      unreadable: ['ours', 'theirs'],
    });
  });

  test('it was so before and the other side mended it: that is the merge', () => {
    expect(mergeJob('', '', job)).toEqual({ text: job, clean: true });
    expect(mergeJob('{ broken\n', job, '{ broken\n')).toEqual({ text: job, clean: true });
  });

  test('mended with an entry less: told', () => {
    const broken = `{ broken\n${more}`;
    expect(mergeJob(broken, job, broken).clean).toBe(false);
  });

  test('a diary in one line loses no entry to the other side', () => {
    const flow = (...said: string[]) => `${UPPER}diary: [${said.join(', ')}]\n`;
    const [a, b] = ['{at: x, id: aaaaaaa1, note: a}', '{at: x, id: aaaaaaa2, note: b}'];
    const merged = mergeJob(flow(a, b), flow(a, b), flow(a), takesOne);
    expect(merged.clean).toBe(false);
    expect(merged.text).toContain('aaaaaaa2');
  });
});
