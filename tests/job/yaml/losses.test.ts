import { describe, expect, it } from 'vitest';
import { readWhole } from '../../../src/job/read.ts';

const HEAD = 'putback: 1\njob: Left cover\n';
const codes = (yaml: string) =>
  readWhole(`${HEAD}${yaml}\n`, 'a.yaml').faults.map((f) => `${f.line}:${f.column} ${f.code}`);

describe('what YAML loses in silence is told', () => {
  it.each([
    ['a number sign in a text', 'found: bolt #12 is bent', '3:13 cut-text'],
    ['a text that is nothing but a number', 'found: #12', '3:8 cut-text'],
    ['in brackets', 'pieces: {cover: {tray: cup #3\n  }}', '3:28 cut-text'],
    ['in a list', 'pieces:\n  cover:\n    loose:\n      - dowel #2', '6:15 cut-text'],
    ['a comma in brackets', 'pieces: {cover: {tray: lid, left}}', '3:29 split-text'],
    ['a decimal comma in brackets', 'buy: {oil: {what: oil, price: 14,20}}', '3:34 split-text'],
    ['a tilde', 'machine: ~', '3:10 tilde'],
    ['null', 'machine: null', '3:10 tilde'],
    ['a tilde in a list', 'pieces: {cover: {loose: [~, dowel]}}', '3:26 tilde'],
    ['a tag', 'machine: !Hollin 400', '3:10 tag'],
    ['a tag that is known', 'machine: !!str 400', '3:10 tag'],
    ['a tag on a mapping', 'pieces: !all\n  cover:', '3:9 tag'],
    ['an anchor', 'machine: &m Hollin', '3:10 anchor'],
    ['an alias', 'machine: *m', '3:10 anchor'],
    ['a picture without a bar', 'pieces:\n  cover:\n    map: 1 2\n      4 3', '5:10 folded-map'],
    [
      'a picture that folds',
      'pieces:\n  cover:\n    map: >\n      1 2\n      4 3',
      '5:10 folded-map',
    ],
    ['a picture in quotes', 'pieces:\n  cover:\n    map: "1 2\n      4 3"', '5:10 folded-map'],
    ['yes', 'found: yes', '3:8 bare-switch'],
    ['Off', 'done: Off', '3:7 bare-switch'],
    ['a piece called on', 'pieces: {on: }', '3:10 bare-switch'],
    ['a key twice', 'found: a\nfound: b', '4:1 twice'],
    ['a key twice in brackets', 'pieces: {cover: {tray: a, tray: b}}', '3:27 twice'],
    ['a key that every object has', 'pieces: {cover: {__proto__: {tray: a}}}', '3:18 odd-key'],
  ])('%s', (_what, yaml, fault) => {
    expect(codes(yaml)).toContain(fault);
  });

  it('the first of two keys counts', () => {
    expect(readWhole(`${HEAD}found: a\nfound: b\n`, 'a').upper.found).toBe('a');
  });
});

describe('and what people write is left in peace', () => {
  it.each([
    ['comments with a blank', 'found: torn # at hole 7'],
    ['comments far behind', 'found: torn   #at hole 7'],
    ['comments in line', 'pieces: # all\n  cover: # one\n    tray: cup 2  # left'],
    ['a log beside the diary', 'diary: #log'],
    ['a number sign in quotes', 'found: "bolt #12"'],
    ['a number sign within a word', 'found: bolt no#12'],
    ['a line of number signs', 'found: torn ######'],
    ['a list in brackets', 'pieces: {cover: {loose: [2 dowels, washer]}}'],
    ['pieces of which only names are said', 'pieces: {hose, cable}'],
    ['a comma in quotes', 'pieces: {cover: {tray: "lid, left"}}'],
    ['a comma on a line of its own', 'found: torn, at hole 7'],
    ['a decimal comma', 'pieces:\n  cover: {thick: "12,5"}'],
    ['words that only start with on or no', 'found: none\ndone: one, not two, offset'],
    ['yes in quotes', 'found: "yes"'],
    ['yes in a sentence', 'found: yes it is'],
    ['a picture of one line', 'pieces:\n  cover:\n    map: 1 2 3'],
    [
      'a picture with a bar',
      'pieces:\n  cover:\n    map: |  # seen from outside\n      1 2\n\n      4 3',
    ],
    [
      'a picture with a bar, indented more',
      'pieces:\n  cover:\n    map: |\n         1 2\n         4 3',
    ],
    ['a text over two lines', 'found: torn\n  at hole 7'],
    ['kinds called Y and N', 'bolts: {Y: M6, N: M8}\npieces: {cover: {bolts: Y N}}'],
    ['rows without kinds', 'pieces: {cover: {bolts: S M+clip ? L}}'],
    [
      'steps with on and off',
      'pieces: {cover: }\ntasks: {a: {do: it, after: cover on, before: cover off}}',
    ],
    ['exclamations', 'found: Torn! And "how"!'],
    ['ampersands', 'found: washer & clip'],
  ])('%s', (_what, yaml) => {
    expect(codes(yaml)).toEqual([]);
  });
});

describe('what is not YAML is told in plain words', () => {
  const first = (yaml: string) => {
    const read = readWhole(`${HEAD}${yaml}\n`, 'a.yaml');
    expect(read.unreadable).toBe(true);
    const [fault] = read.faults;
    return `${fault?.line}:${fault?.column} ${fault?.say}`;
  };

  it.each([
    [
      'an open bracket',
      'pieces: {cover: {bolts: S}\ntasks:',
      '4:1 this is not YAML: a bracket { or [ is still open here',
    ],
    [
      'an open bracket at the end',
      'pieces: {cover: [S',
      '4:1 this is not YAML: a bracket { or [ is still open here',
    ],
    ['an open quote', 'found: "torn', '3:8 this is not YAML: a quote is still open here'],
    [
      'a quote inside quotes',
      "found: 'don't'",
      '3:13 this is not YAML: more stands here than one value',
    ],
    [
      'words behind a quoted text',
      'found: "torn" at 7',
      '3:15 this is not YAML: more stands here than one value',
    ],
    [
      'a key out of line',
      'pieces:\n  cover:\n lever:',
      '5:2 this is not YAML: this line stands too far left or right',
    ],
    [
      'a line without a colon',
      'found torn\ndone: x',
      '3:1 this is not YAML: here is a text where a key and its colon belong',
    ],
    [
      'a colon in a text',
      'found: oil: 1.9 l',
      '3:8 a second colon in this line makes a key of the text before it',
    ],
    ['a tab', 'pieces:\n\tcover:', '4:1 a tab indents this line, and YAML counts blanks only'],
    ['an at sign', 'found: @hole 7', '3:8 this is not YAML: a text cannot start with this sign'],
    [
      'a wrong escape',
      'found: "C:\\oil"',
      '3:11 this is not YAML: a backslash in double quotes starts an escape, and this is none',
    ],
    [
      'a comma too many',
      'pieces: {a: , , b: }',
      '3:15 this is not YAML: a comma stands here with nothing before it',
    ],
    [
      'a list behind its key',
      'pieces: - cover',
      '3:9 this is not YAML: more stands here than one value',
    ],
    ['a per cent sign', 'found: %', '3:8 this is not YAML: a text cannot start with this sign'],
  ])('%s', (_what, yaml, said) => {
    expect(first(yaml)).toBe(said);
  });

  it('two versions at once, one after the other, are each told with all their lines', () => {
    const side = (a: string, b: string) => `<<<<<<< HEAD\n${a}\n=======\n${b}\n>>>>>>> other\n`;
    const read = readWhole(
      `${HEAD}${side('found: a', 'found: b')}done: x\n${side('', '')}`,
      'a.yaml',
    );
    expect(read.unreadable).toBe(true);
    expect(read.faults.map((f) => `${f.line} ${f.say}`)).toEqual([
      '3 git left two versions here: one below this line, the other between lines 5 and 7',
      '9 git left two versions here: one below this line, the other between lines 11 and 13',
    ]);
  });

  it('a line of equals signs in a text is no conflict', () => {
    expect(codes('found: |\n  a\n  =======\n  b')).toEqual([]);
  });
});
