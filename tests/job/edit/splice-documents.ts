/** Job files in all the habits that people and editors have, for the tests that splice them. */
import fc from 'fast-check';
import { parseDocument } from 'yaml';

export interface Made {
  text: string;
  /** The piece whose row is known, and its words. */
  piece: string;
  row: string[];
}

const word = fc.constantFrom('S', 'M', 'L', 'M+clip', 'S+copper', 'L+washer+clip');
const comment = fc.constantFrom(
  '# mind the dowels',
  '#',
  '# - {not: an entry}',
  '# diary: not this',
);
const says = fc.constantFrom(
  'soaking',
  'a # b',
  'comma, and {brace}',
  '',
  'été ✓',
  "it's",
  '- dash',
);
const gap = fc.constantFrom('', '\n', '\n\n', '\n# about what comes\n', '# about what comes\n');

/** One entry of the diary, in a person's spelling or in the program's. */
const entry = fc
  .record({
    id: fc.stringMatching(/^[A-Za-z0-9]{8}$/),
    says,
    form: fc.constantFrom('line', 'loose', 'block', 'folded', 'kept'),
    after: fc.option(comment, { nil: null }),
  })
  .map(({ id, says, form, after }) => {
    const text = JSON.stringify(says);
    const at = '2026-04-11T18:25:40+02:00';
    const lines = {
      line: [`- {at: ${at}, id: "${id}", note: ${text}}`],
      loose: [`-   { at: ${at},id: "${id}" , note: ${text} }   # by hand`],
      block: [`- at: ${at}`, `  id: "${id}"`, `  note: ${text}`],
      folded: [`- at: ${at}`, `  id: "${id}"`, '  note: >', '    two', '', '    # lines of text'],
      kept: [`- at: ${at}`, `  id: "${id}"`, '  note: |+', '    kept', ''],
    }[form];
    return after === null ? lines : [...lines, after];
  });

const diary = fc
  .record({
    form: fc.constantFrom('none', 'empty', 'comment', 'list', 'block', 'block', 'block'),
    indent: fc.constantFrom('', '  ', '    ', ' '),
    entries: fc.array(entry, { minLength: 1, maxLength: 4 }),
    key: fc.constantFrom('diary:', 'diary: ', 'diary:  # what happened', '"diary":', 'diary :'),
  })
  .map(({ form, indent, entries, key }) => {
    if (form === 'none') return '';
    if (form === 'empty') return `${key}\n`;
    if (form === 'comment') return `${key}\n  # nothing yet\n`;
    if (form === 'list') return 'diary: []  # nothing yet\n';
    const lines = entries.flat().map((l) => (l === '' ? '' : indent + l));
    return `${key}\n${lines.join('\n')}\n`;
  });

/** A row in one of its spellings, with the column of the keys of its piece. */
const row = (pad: string) =>
  fc
    .record({
      words: fc.array(word, { minLength: 1, maxLength: 5 }),
      form: fc.constantFrom(
        'plain',
        'spaced',
        'double',
        'single',
        'flow',
        'full',
        'block',
        'literal',
        'wrapped',
        'escaped',
      ),
    })
    .map(({ words, form }) => {
      const full = words.map((w) => {
        const [kind, ...under] = w.split('+');
        if (under.length === 0) return `{kind: ${kind}}`;
        return `{ kind: ${kind}, with: ${under.length === 1 ? under[0] : `[${under.join(', ')}]`} }`;
      });
      const text = {
        plain: `bolts: ${words.join(' ')}`,
        spaced: `bolts:   ${words.join('   ')}   # from 12 o'clock`,
        double: `bolts: "${words.join(' ')}"`,
        single: `bolts: ' ${words.join('  ')}'`,
        flow: `bolts: [ ${words.join(' ,  ')} ]`,
        full: `bolts: [${full.join(', ')}]`,
        block: `bolts:\n${words.map((w) => `${pad}- ${w}  # one`).join('\n')}`,
        literal: `bolts: |\n${pad}  ${words.join(`\n${pad}  `)}`,
        wrapped: `bolts: ${words.join(`\n${pad}  `)}`,
        escaped: `bolts: "${words.join('\\t')}"`,
      }[form];
      return { words, text, flows: !['block', 'literal', 'wrapped', 'spaced'].includes(form) };
    });

const pieces = fc.constantFrom('  ', '    ', ' ').chain((step) =>
  fc
    .record({
      row: row(step + step),
      flow: fc.boolean(),
      quotedKey: fc.boolean(),
      other: fc.constantFrom(
        '',
        `${step}lever: {marks: dot on the shaft}\n`,
        `${step}# later\n${step}hose:\n`,
      ),
      extra: fc.constantFrom('', 'name: Left cover', 'torque: 10 N·m, manual 2-17'),
    })
    .map(({ row, flow, quotedKey, other, extra }) => {
      const key = quotedKey ? '"cover"' : 'cover';
      const body =
        flow && row.flows
          ? `${step}${key}: { ${[extra, row.text].filter((x) => x !== '' && !x.includes(', m')).join(',  ')} }\n`
          : `${step}${key}:\n${[extra, row.text]
              .filter((x) => x !== '')
              .map((x) => `${step}${step}${x}\n`)
              .join('')}`;
      return { text: `pieces:\n${body}${other}`, row: row.words };
    }),
);

const kinds = fc.constantFrom(
  '',
  'bolts:\n  S: M6x25 flange, 8 mm   # most\n  M: "M6x35"\n',
  'bolts:\n    S:   M6x25\n    # the long ones\n',
  'bolts: {S: M6x25, M: {text: M6x35, class: 8.8}}\n',
  'bolts:\n',
  'bolts: {}\n',
);

/** Whole files: the diary last or not, any line ending, byte order mark, last newline or none. */
export const documents: fc.Arbitrary<Made> = fc
  .record({
    header: fc.constantFrom('', '# yaml-language-server: $schema=x\n', '---\n', '%YAML 1.2\n---\n'),
    kinds,
    pieces,
    diary,
    last: fc.boolean(),
    gaps: fc.tuple(gap, gap, gap),
    tail: fc.constantFrom('', '\n', '# end\n', '\n\n# vim: ts=2\n', '  # in the block\n'),
    crlf: fc.boolean(),
    bom: fc.boolean(),
    newline: fc.boolean(),
  })
  .map((d) => {
    const upper = `putback: 1\njob: |\n  Oil,\n  diary: weeps\n${d.gaps[0]}${d.kinds}${d.gaps[1]}${d.pieces.text}`;
    const body = d.last ? upper + d.gaps[2] + d.diary : d.diary + d.gaps[2] + upper;
    let text = d.header + body + d.tail;
    if (!d.newline) text = text.replace(/\n+$/, '');
    if (d.crlf) text = text.replaceAll('\n', '\r\n');
    if (d.bom) text = `\uFEFF${text}`;
    return { text, piece: 'cover', row: d.pieces.row };
  })
  .filter((d) => parseDocument(d.text, { schema: 'failsafe' }).errors.length === 0);

/** What a file says, as texts. */
export function read(text: string): Record<string, unknown> {
  const doc = parseDocument(text, { schema: 'failsafe' });
  if (doc.errors[0]) throw doc.errors[0];
  return doc.toJS() as Record<string, unknown>;
}
