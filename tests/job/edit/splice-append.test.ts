import fc from 'fast-check';
import { expect, test } from 'vitest';
import { appendEntry } from '../../../src/job/edit/splice.ts';
import { runs } from '../../runs.ts';
import { documents, read } from './splice-documents.ts';

const LINE = '- {at: 2026-05-02T10:11:05+02:00, id: 7Hn2XcPa, piece: cover, hole: 4, in: M+clip}';
const ENTRY = {
  at: '2026-05-02T10:11:05+02:00',
  id: '7Hn2XcPa',
  piece: 'cover',
  hole: '4',
  in: 'M+clip',
};
const OLD = '- {at: x, id: k3Vb9xQe, note: "first"}';

test.each([
  ['a new file, which ends with its diary', 'job: x\ndiary:\n', `job: x\ndiary:\n  ${LINE}\n`],
  ['a second mark', `diary:\n  ${OLD}\n`, `diary:\n  ${OLD}\n  ${LINE}\n`],
  ['entries indented by four', `diary:\n    ${OLD}\n`, `diary:\n    ${OLD}\n    ${LINE}\n`],
  ['entries not indented', `diary:\n${OLD}\nbuy: {}\n`, `diary:\n${OLD}\n${LINE}\nbuy: {}\n`],
  ['CRLF', `job: x\r\ndiary:\r\n  ${OLD}\r\n`, `job: x\r\ndiary:\r\n  ${OLD}\r\n  ${LINE}\r\n`],
  ['no last newline', `diary:\n  ${OLD}`, `diary:\n  ${OLD}\n  ${LINE}`],
  ['CRLF without last newline', `job: x\r\ndiary:`, `job: x\r\ndiary:\r\n  ${LINE}`],
  ['no diary yet', 'job: x\n', `job: x\ndiary:\n  ${LINE}\n`],
  ['no diary and no last newline', 'job: x', `job: x\ndiary:\n  ${LINE}`],
  ['an empty file', '', `diary:\n  ${LINE}\n`],
  ['a byte order mark', '\uFEFFdiary:\n', `\uFEFFdiary:\n  ${LINE}\n`],
  ['only comments', '# mine\n', `# mine\ndiary:\n  ${LINE}\n`],
  ['an empty list', 'diary: [] # log\n', `diary: # log\n  ${LINE}\n`],
  ['keys indented', '  job: x\n  diary:\n', `  job: x\n  diary:\n    ${LINE}\n`],
  ['an end mark', 'job: x\n...\n', `job: x\ndiary:\n  ${LINE}\n...\n`],
  [
    'the diary in the middle',
    `diary:\n  ${OLD}\n\ntasks:\n`,
    `diary:\n  ${OLD}\n  ${LINE}\n\ntasks:\n`,
  ],
  ['all on one line', '{job: x}\n', `{job: x, diary: [${LINE.slice(2)}]}\n`],
  ['a flow list', `diary: [${OLD.slice(2)}]\n`, `diary: [${OLD.slice(2)}, ${LINE.slice(2)}]\n`],
])('a mark goes into %s', (_, before, after) => {
  expect(appendEntry(before, LINE)).toBe(after);
});

test.each([
  [
    'as deep as the entries: stays above',
    `diary:\n  ${OLD}\n  # soaking\n`,
    `diary:\n  ${OLD}\n  # soaking\n  ${LINE}\n`,
  ],
  [
    'deeper than the entries: stays above',
    `diary:\n  ${OLD}\n\n    # soaking\n`,
    `diary:\n  ${OLD}\n\n    # soaking\n  ${LINE}\n`,
  ],
  [
    'at the margin: stays below',
    `diary:\n  ${OLD}\n# end\n`,
    `diary:\n  ${OLD}\n  ${LINE}\n# end\n`,
  ],
  [
    'behind a blank line: stays below',
    `diary:\n  ${OLD}\n\n  # end\n`,
    `diary:\n  ${OLD}\n  ${LINE}\n\n  # end\n`,
  ],
  [
    'between entries: stays',
    `diary:\n  # a\n  ${OLD}\n  # b\n  ${OLD}\n`,
    `diary:\n  # a\n  ${OLD}\n  # b\n  ${OLD}\n  ${LINE}\n`,
  ],
])('a comment after the last entry, %s', (_, before, after) => {
  expect(appendEntry(before, LINE)).toBe(after);
});

test.each([['- a list\n'], ['diary: a text\n'], ['job: "open\n']])(
  'a file with no room for an entry comes back unchanged: %j',
  (text) => {
    expect(appendEntry(text, LINE)).toBe(text);
  },
);

test('a mark adds one entry and keeps every other byte, in files of every habit', () => {
  fc.assert(
    fc.property(documents, ({ text }) => {
      const next = appendEntry(text, LINE);
      const before = read(text);
      const list = Array.isArray(before.diary) ? before.diary : [];
      expect(read(next)).toEqual({ ...before, diary: [...list, ENTRY] });
      expect(read(next).diary).toEqual([...list, ENTRY]);
      // Without what was put in, the old bytes are there, but for an empty list's two brackets.
      const old = text.replace(/(diary:) \[\]/, '$1');
      const at = next.indexOf(LINE);
      const inserted = next.length - old.length;
      expect(inserted).toBeGreaterThanOrEqual(LINE.length);
      const start = [...Array(inserted - LINE.length + 1).keys()]
        .map((k) => at - k)
        .find((s) => next.slice(0, s) + next.slice(s + inserted) === old);
      expect(start).toBeDefined();
      expect(next.endsWith('\n')).toBe(text.endsWith('\n'));
      expect(
        /(^|[^\r])\n/.test(next.slice(start, (start ?? 0) + inserted)) && text.includes('\r\n'),
      ).toBe(false);
    }),
    { numRuns: runs(600) },
  );
});

test('a thousand marks stand in their order', () => {
  let text = 'job: x\ndiary:\n\n# end\n';
  for (let i = 0; i < 1000; i++) text = appendEntry(text, `- {id: n${i}}`);
  expect(read(text).diary).toEqual(Array.from({ length: 1000 }, (_, i) => ({ id: `n${i}` })));
  expect(text.endsWith('\n\n# end\n')).toBe(true);
});
