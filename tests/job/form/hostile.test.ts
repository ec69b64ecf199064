import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printFault } from '../../../src/job/faults/faults.ts';
import { readJob, readWhole } from '../../../src/job/read.ts';
import { runs } from '../../runs.ts';
import { EXAMPLE, FULL } from './example.ts';
import { anyText } from './make.ts';

const HEAD = 'putback: 1\njob: Left cover\n';

describe('reading answers, whatever comes', () => {
  it('any text', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(anyText, fc.constantFrom('\n', '  ', ': ', '- ', HEAD))),
        (parts) => {
          const { upper, faults } = readJob(parts.join(''), 'a.yaml');
          expect(upper.pieces).toBeInstanceOf(Map);
          for (const fault of faults) expect(printFault(fault)).toMatch(/^a\.yaml:[0-9]+:[0-9]+: /);
        },
      ),
      { numRuns: runs(500) },
    );
  });

  it('any part of a good file, with something in the middle of it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(EXAMPLE, FULL),
        fc.nat(),
        fc.nat(),
        anyText,
        (file, a, b, put) => {
          const at = a % file.length;
          const read = readJob(file.slice(0, at) + put + file.slice(at + (b % 40)), 'a.yaml');
          const places = read.faults.map((f) => [f.line, f.column] as const);
          const sorted = [...places].sort((x, y) => x[0] - y[0] || x[1] - y[1]);
          expect(places).toEqual(sorted);
        },
      ),
      { numRuns: runs(300) },
    );
  });

  it.each([
    ['a hundred megabytes', () => 'a'.repeat(100_000_000), 'too-big'],
    ['a million brackets', () => `${HEAD}machine: ${'['.repeat(1_000_000)}`, 'too-deep'],
    ['a million mappings', () => `${HEAD}machine: ${'{a: '.repeat(900_000)}`, 'too-deep'],
    [
      'a million lists in one line',
      () => `${HEAD}machine:\n  ${'- '.repeat(1_000_000)}`,
      'too-deep',
    ],
    [
      'a thousand levels of indentation',
      () => HEAD + Array.from({ length: 1000 }, (_, i) => `${' '.repeat(i)}a:\n`).join(''),
      'too-deep',
    ],
    ['NUL and nothing else', () => '\0'.repeat(1_000_000), 'not-text'],
    [
      'bytes that were no UTF-8',
      () => Buffer.from([0x66, 0xff, 0xfe, 0x0a]).toString('utf8'),
      'not-utf8',
    ],
  ])('%s', (_what, make, code) => {
    const { faults } = readJob(make(), 'a.yaml');
    expect(faults.map((f) => f.code)).toContain(code);
    expect(faults.length).toBeLessThan(10);
  });

  it('aliases of aliases are named and never followed', () => {
    const bomb = [...'bcdefghi'].map((c, i) => {
      const before = 'abcdefgh'[i];
      return `${c}: &${c} [${Array(9).fill(`*${before}`).join(', ')}]`;
    });
    const { upper, faults } = readJob(`${HEAD}a: &a [x, x, x]\n${bomb.join('\n')}\n`, 'a.yaml');
    expect(upper.job).toBe('Left cover');
    expect(faults.filter((f) => f.code === 'anchor')).toHaveLength(9 + 8 * 9);
  });

  it('names that every object has are names like others', () => {
    const text = `${HEAD}pieces:\n  constructor: {bolts: S}\n  to-string:\n  valueof: {under: constructor}\n`;
    const { upper, faults } = readJob(text, 'a.yaml');
    expect(faults).toEqual([]);
    expect(upper.pieces.get('valueof')?.under).toEqual(['constructor']);
    expect(upper.pieces.has('toString')).toBe(false);
    const odd = readJob(`${HEAD}pieces: {cover: {constructor: x, hasOwnProperty: y}}\n`, 'a.yaml');
    expect(odd.faults.map((f) => f.code)).toEqual(['unknown-key', 'unknown-key']);
    expect(Object.prototype).not.toHaveProperty('tray');
  });

  it('what a file says cannot speak to the terminal through a message', () => {
    const text = `${HEAD}pieces:\n  cover: {under: "\\e[31mred\\u202e\\u200b", "\\e]0;x\\a": y}\n`;
    const shown = readJob(text, 'a\x1b[2J.yaml').faults.map(printFault).join('\n');
    expect(shown).toContain('\\x1b[31mred\\u202e\\u200b');
    expect(shown.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  });

  it('a very long line is shown around its caret', () => {
    const { faults } = readWhole(
      `${HEAD}pieces: {cover: {note: "${'x'.repeat(50_000)}", torqe: y}}\n`,
      'a',
    );
    const [line = '', caret = ''] = faults[0]?.excerpt.split('\n') ?? [];
    expect(line.length).toBeLessThan(130);
    expect(line.slice(caret.length - 1)).toMatch(/^torqe: y/);
  });

  it('the caret stands below its word behind wide letters and marks', () => {
    const { faults } = readWhole(`${HEAD}pieces: {cover: {note: 漢字 e\u0301, torqe: y}}\n`, 'a');
    expect(faults[0]?.column).toBe(31);
    const [line = '', caret = ''] = faults[0]?.excerpt.split('\n') ?? [];
    // Two wide letters take four columns, a mark above a letter none.
    expect(caret.length - 1).toBe([...line.slice(0, line.indexOf('torqe'))].length + 2 - 1);
  });
});
