/** Generators of entries and texts for the tests of reading and writing job files. */
import fc from 'fast-check';
import {
  BESIDE,
  CORRECTABLE,
  type Entry,
  HOLE_STATES,
  LOOKED,
  VERBS,
  type Verb,
  WRITTEN,
} from '../../../src/model/types.ts';

/** Texts that YAML readers stumble over, beside any text at all. */
export const anyText = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.string({ unit: 'grapheme' }),
  fc.constantFrom(
    ...['on', 'off', 'yes', 'no', 'y', 'N', '~', 'null', 'true', '1.10', '007', '1e3', '0x1F'],
    ...['0o17', '1_000', '+5', '.5', '12:30', '2026-05-02', '<<', '=', '', ' ', ' a', 'a ', '!'],
    ...['-', '- a', 'a #b', '#a', 'a: b', 'a:', '*a', '&a', 'a, b', '{a}', '[a]', "'a'", '"a"'],
    ...['cup 2', '10 N·m', 'S S M+clip', 'M+clip', 'a\nb', 'a\r\nb', '\t', '\u0085', '\u2028'],
    ...['\u202eabc', '\ufeff', '\x1b[31m', '\\', '\\n', '---', '...', '%a', '@a', '`a', '|', '>'],
  ),
);

export const anyHole = fc
  .tuple(fc.integer({ min: 1, max: 999 }), fc.constantFrom('', '', '', 'a', 'e', 'x'))
  .map(([n, letter]) => `${n}${letter}`);

export const anyName = fc.oneof(
  fc.stringMatching(/^[a-z0-9][a-z0-9-]{0,9}$/),
  fc.constantFrom('alternator', 'on', 'yes', 'n', '10', '1e3', '0x1', '2026-05-02'),
);

const anyId = fc.oneof(
  fc.stringMatching(/^[A-Za-z0-9_-]{8}$/),
  fc.constantFrom(
    '12345678',
    '1e345678',
    '0x123456',
    '--------',
    '---abcde',
    '2026-1-1',
    '_1234567',
  ),
);

const anyTime = fc
  .tuple(
    fc.integer({ min: 946684800, max: 4102444799 }),
    fc.constantFrom('', '.5', '.123'),
    fc.constantFrom('Z', '+02:00', '-11:30', '+00:00'),
  )
  .map(([s, part, zone]) => new Date(s * 1000).toISOString().replace('.000Z', `${part}${zone}`));

const WORDS: Partial<Record<Verb, readonly string[]>> = {
  state: HOLE_STATES,
  removed: ['all', 'aside'],
  fitted: ['all'],
  written: WRITTEN,
  corrected: CORRECTABLE,
  looked: LOOKED,
};

const holes = fc.array(anyHole, { minLength: 1, maxLength: 4 });

function places(verb: Verb): fc.Arbitrary<Partial<Entry>> {
  const piece = fc.record({ piece: anyName });
  const some = fc.record({ piece: anyName, hole: holes });
  const task = fc.record({ task: anyName });
  const buy = fc.record({ buy: anyName });
  const check = fc.record({ check: anyName });
  const suspect = fc.record({ suspect: anyName });
  switch (verb) {
    case 'looked':
      return fc.oneof(check, suspect);
    case 'listed':
      return fc.oneof(check, suspect, fc.constant({}));
    case 'tried':
    case 'found':
      return suspect;
    case 'chosen':
      return piece;
    case 'figured':
      return task;
    case 'out':
    case 'in':
    case 'tight':
      return fc.oneof(piece, some);
    case 'state':
    case 'settle':
      return some;
    case 'removed':
    case 'fitted':
      return piece;
    case 'written':
      return fc.oneof(piece, some, fc.constant({}));
    case 'corrected':
      return fc.oneof(piece, some, task);
    case 'done':
      return fc.oneof(task, buy);
    case 'inside':
    case 'cleared':
    case 'seen':
    case 'struck':
    case 'added':
      return fc.oneof(piece, fc.constant({}));
    case 'note':
      return fc.oneof(piece, some, task, buy, fc.constant({}));
    case 'photo':
      return fc.oneof(piece, some, fc.constant({}));
    case 'taken':
      return piece;
    case 'keep':
    case 'reading':
    case 'renamed':
    case 'undo':
      return fc.constant({});
  }
}

const anyBeside: fc.Arbitrary<Partial<Entry>> = fc.record(
  Object.fromEntries(BESIDE.map((k) => [k, anyText])),
  { requiredKeys: [] },
);

/** Any entry that can stand in a diary. */
export const anyEntry: fc.Arbitrary<Entry> = fc.constantFrom(...VERBS).chain((verb) => {
  const words = WORDS[verb];
  const value = words
    ? fc.constantFrom(...words)
    : verb === 'undo' || verb === 'keep'
      ? anyId
      : anyText;
  return fc
    .tuple(anyTime, anyId, value, places(verb), anyBeside)
    .map(([at, id, v, place, beside]) => ({ at, id, ...place, verb, value: v, ...beside }));
});
