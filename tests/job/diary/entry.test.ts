import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import {
  isPlain,
  isTime,
  parseEntryLine,
  printEntry,
  quote,
  TIME,
} from '../../../src/job/diary/entry.ts';
import type { Entry } from '../../../src/model/types.ts';
import { anyEntry, anyText } from '../form/make.ts';

const AT = '2026-05-02T10:11:05+02:00';

describe('an entry is one line of the file', () => {
  it('reads like the examples of the form', () => {
    const entry: Entry = {
      at: AT,
      id: '7Hn2XcPa',
      piece: 'alternator',
      hole: ['4'],
      verb: 'in',
      value: 'M+clip',
    };
    expect(printEntry(entry)).toBe(
      '- {at: 2026-05-02T10:11:05+02:00, id: 7Hn2XcPa, piece: alternator, hole: 4, in: M+clip}',
    );
    expect(
      printEntry({ ...entry, hole: ['1', '2'], verb: 'tight', value: 'full', set: '10 N·m' }),
    ).toBe(
      '- {at: 2026-05-02T10:11:05+02:00, id: 7Hn2XcPa, piece: alternator, hole: [1, 2], tight: full, set: 10 N·m}',
    );
    expect(
      printEntry({ at: AT, id: 'k3Vb9xQe', piece: 'cover', verb: 'out', value: 'S S M+clip !' }),
    ).toBe('- {at: 2026-05-02T10:11:05+02:00, id: k3Vb9xQe, piece: cover, out: "S S M+clip !"}');
  });

  it('has a time as the pattern of times says, whatever tells it', () => {
    const two = fc.integer({ min: 0, max: 99 }).map((n) => `${n}`.padStart(2, '0'));
    const zone = fc.oneof(
      fc.constantFrom('Z', 'z', '', '+0200', '+02:00 '),
      fc.tuple(fc.constantFrom('+', '-'), two, two).map(([sign, h, m]) => `${sign}${h}:${m}`),
    );
    const behind = fc.constantFrom('', '', '', '.5', '.', '.1234567890');
    const near = fc
      .tuple(fc.constantFrom('2026', '0000', '26'), two, two, two, two, two, behind, zone)
      .map(([y, mo, d, h, m, s, part, z]) => `${y}-${mo}-${d}T${h}:${m}:${s}${part}${z}`);
    fc.assert(
      fc.property(fc.oneof(near, anyText), (text) => {
        expect(isTime(text)).toBe(TIME.test(text));
      }),
      { numRuns: 5000 },
    );
    // By chance few are times in all their parts.
    const edges = ['00', '01', '12', '13', '23', '24', '31', '32', '59', '60', '61'];
    for (const a of edges)
      for (const b of edges)
        for (const text of [
          `2026-${a}-${b}T10:11:05+02:00`,
          `2026-05-02T${a}:${b}:05Z`,
          `2026-05-02T10:11:${a}-05:${b}`,
          `2026-05-02T10:11:05+${a}:${b}`,
        ])
          expect(isTime(text), text).toBe(TIME.test(text));
  });

  it('quotes what an older YAML reader would take for something else', () => {
    for (const text of ['on', 'Off', 'yes', 'NO', 'y', 'n', '~', 'null', 'true', '', ' a', 'a ']) {
      expect(isPlain(text), text).toBe(false);
    }
    for (const text of [
      '1.10',
      '007',
      '1e3',
      '0x1F',
      '0o17',
      '1_000',
      '2026-05-02',
      '12:30',
      'e0',
      'E1',
    ]) {
      expect(isPlain(text), text).toBe(false);
    }
    for (const text of ['a #b', 'a: b', '!', '-', '- a', '<<', '*a', '&a', 'a, b', '{a}', '=']) {
      expect(isPlain(text), text).toBe(false);
    }
    for (const text of ['cup 2', '10 N·m', 'M+clip', 'S', 'full', '20..30 mm']) {
      expect(isPlain(text), text).toBe(true);
    }
  });

  it('quotes a tray called yes and an id that looks like a number', () => {
    expect(
      printEntry({
        at: AT,
        id: '1e345678',
        piece: 'on',
        verb: 'removed',
        value: 'all',
        tray: 'yes',
      }),
    ).toBe(
      '- {at: 2026-05-02T10:11:05+02:00, id: "1e345678", piece: "on", removed: all, tray: "yes"}',
    );
  });

  it('shows what turns or hides text as an escape', () => {
    expect(quote('a\nb\u0085c\u2028d\u202ee\x1b')).toBe('"a\\nb\\u0085c\\u2028d\\u202ee\\u001b"');
  });

  it('may hold the sign that stands for a lost character: nothing was lost here', () => {
    const text = 'a \ufffd b';
    const entry: Entry = {
      at: '2026-04-11T18:25:40+02:00',
      id: 'k3Vb9xQe',
      verb: 'note',
      value: text,
    };
    const line = printEntry(entry);
    expect(line).toContain('note: "a \\ufffd b"');
    expect(parseEntryLine(line)).toEqual(entry);
    expect(parse(line, { schema: 'core' })[0].note).toBe(text);
  });

  it('comes back as it was, whatever it says', () => {
    fc.assert(
      fc.property(anyEntry, (entry) => {
        const line = printEntry(entry);
        expect(line).not.toMatch(/[\n\r\u0085\u2028\u2029\x00-\x1f]/);
        expect(parseEntryLine(line)).toEqual(entry);
        expect(parseEntryLine(`   ${line}`)).toEqual(entry);
      }),
      { numRuns: 500 },
    );
  });

  it('says the same to readers of YAML 1.2, of YAML 1.1 and of texts alone', () => {
    fc.assert(
      fc.property(anyEntry, (entry) => {
        const line = printEntry(entry);
        const texts = plain(entry);
        expect(parse(line, { schema: 'failsafe' })).toEqual([texts]);
        expect(holesAsTexts(parse(line, { schema: 'core' })[0])).toEqual(texts);
        // An older reader takes the time for a time: the same moment, nothing else changed.
        const old = holesAsTexts(parse(line, { version: '1.1' })[0]);
        expect(new Date(old.at as string).getTime()).toBe(new Date(entry.at).getTime());
        expect({ ...old, at: entry.at }).toEqual(texts);
      }),
      { numRuns: 500 },
    );
  });

  it('quotes any text so that JSON and YAML agree on it', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(JSON.parse(quote(text))).toBe(text);
        expect(parse(quote(text))).toBe(text);
        expect(parse(`[{a: ${quote(text)}}]`, { version: '1.1' })).toEqual([{ a: text }]);
      }),
      { numRuns: 500 },
    );
  });
});

describe('a line that is no entry as the program writes it is left to the whole parse', () => {
  const good = `- {at: ${AT}, id: 7Hn2XcPa, piece: cover, hole: 4, in: S}`;

  it.each([
    ['no line', ''],
    ['a comment behind it', `${good} # hm`],
    ['a blank behind it', `${good} `],
    ['a tab before it', `\t${good}`],
    ['no dash', good.slice(2)],
    ['two blanks after a comma', good.replace(', id', ',  id')],
    ['a key twice', good.replace('in: S', 'in: S, in: S')],
    ['two verbs', good.replace('in: S', 'in: S, out: S')],
    ['no verb', good.replace(', in: S', '')],
    ['a hole without a piece', good.replace('piece: cover, ', '')],
    ['two places', good.replace('hole: 4', 'task: drain')],
    ['an unknown key', good.replace('in: S', 'in: S, by: me')],
    ['a key of every object', good.replace('in: S', 'in: S, constructor: me')],
    ['a time without an offset', good.replace('+02:00', '')],
    ['a month 13', good.replace('2026-05', '2026-13')],
    ['an id of seven characters', good.replace('7Hn2XcPa', '7Hn2XcP')],
    ['a hole 0', good.replace('hole: 4', 'hole: 0')],
    ['no hole in the list', good.replace('hole: 4', 'hole: []')],
    ['a state that is none', good.replace('in: S', 'state: lost')],
    ['a state of no hole', good.replace('hole: 4, in: S', 'state: stuck')],
    ['a bare switch', good.replace('in: S', 'in: yes')],
    ['a bare tilde', good.replace('in: S', 'in: ~')],
    ['a tag', good.replace('in: S', 'in: !S')],
    ['an alias', good.replace('in: S', 'in: *S')],
    ['an escape that JSON does not know', good.replace('in: S', 'in: "\\x41"')],
  ])('%s', (_what, line) => {
    expect(parseEntryLine(line)).toBeNull();
  });

  it('but the order of keys and the depth of the list are free', () => {
    expect(
      parseEntryLine(`    - {in: S, hole: [4, 5b], piece: cover, id: 7Hn2XcPa, at: ${AT}}`),
    ).toEqual({
      at: AT,
      id: '7Hn2XcPa',
      piece: 'cover',
      hole: ['4', '5b'],
      verb: 'in',
      value: 'S',
    });
  });
});

/** The entry as a YAML reader of texts sees it. */
function plain(entry: Entry): Record<string, unknown> {
  const { verb, value, hole, ...rest } = entry;
  const names = hole?.length === 1 ? hole[0] : hole;
  return { ...rest, ...(names === undefined ? {} : { hole: names }), [verb]: value };
}

function holesAsTexts(entry: Record<string, unknown>): Record<string, unknown> {
  const { hole } = entry;
  if (hole === undefined) return entry;
  return { ...entry, hole: Array.isArray(hole) ? hole.map(String) : String(hole) };
}
