import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chapters } from '../../../src/diary/prose.ts';
import { parseEntryLine, printEntry } from '../../../src/job/diary/entry.ts';
import { fold } from '../../../src/job/fold/fold.ts';
import { sayEntry } from '../../../src/job/fold/say-entry.ts';
import { helpFor, keysOf } from '../../../src/job/form/help.ts';
import { readJob } from '../../../src/job/read.ts';
import { BESIDE, VERBS } from '../../../src/model/types.ts';
import { BESIDE_ROWS } from '../../../src/model/verbs/beside.ts';
import { PLACES, VERB_ROWS, verbRow } from '../../../src/model/verbs/verbs.ts';
import { checkAll } from '../../../src/plan/check.ts';

const HEAD = `putback: 1
job: x
bolts: {S: M6x25}
pieces: {cover: {bolts: S S S, torque: "10 N·m"}}
tasks: {drain: {do: Drain the oil}}
buy: {gasket: Cover gasket}
suspects: {coil: Ignition coil open}
checks: {spark: {check: Blue spark, bad: coil}}
diary:
`;
const STAMP = 'at: 2026-04-11T18:25:40+02:00, id: k3Vb9xQe';
const LAST = '  - {at: 2026-04-11T19:00:00+02:00, id: abcdefgh, piece: cover, removed: all}\n';
const ABOUT: Record<string, string> = {
  piece: 'piece: cover',
  hole: 'hole: 2',
  task: 'task: drain',
  buy: 'buy: gasket',
  check: 'check: spark',
  suspect: 'suspect: coil',
};

/** A line for each set of places that a verb can be about, with the example of its row. */
function linesOf(verb: (typeof VERBS)[number]): string[] {
  return verbRow(verb).about.map((places) => {
    const about = places.map((place) => ABOUT[place.replace('!', '')]);
    return `- {${[STAMP, ...about, VERB_ROWS[verb].like].join(', ')}}`;
  });
}

describe('each verb of the diary', () => {
  it.each(VERBS)('%s is read as it is written, told in words and in the diary', (verb) => {
    for (const line of linesOf(verb)) {
      const entry = parseEntryLine(line);
      expect(entry?.verb, line).toBe(verb);
      if (!entry) continue;
      expect(printEntry(entry)).toBe(line);
      const { upper, entries, faults } = readJob(`${HEAD}  ${line}\n`, 'a.yaml');
      // Without a text beside it, and with nothing before it, an undo and a correction say too little.
      const alone = ['undo-unknown', 'entry-truth'];
      expect(faults.filter((f) => !alone.includes(f.code))).toEqual([]);
      const job = fold(upper, entries);
      expect(sayEntry(entry, job).length).toBeGreaterThan(2);
      expect(chapters(job, new Map())[0]?.lines).toHaveLength(1);
      expect(checkAll(`${HEAD}  ${line}\n`, 'a.yaml').length).toBeLessThan(3);
    }
  });

  it.each(BESIDE)('%s may stand beside any of them', (key) => {
    for (const verb of VERBS) {
      const [line = ''] = linesOf(verb);
      const longer = `${line.slice(0, -1)}, ${BESIDE_ROWS[key].like}}`;
      const [entry] = readJob(`${HEAD}  ${longer}\n`, 'a.yaml').entries;
      expect(entry?.[key], longer).toBeTruthy();
      expect(entry && parseEntryLine(printEntry(entry))).toEqual(entry);
    }
  });

  it('the help has a line for every key of an entry, in the order of the line', () => {
    expect(keysOf('entry')).toEqual(['at', 'id', ...PLACES, ...VERBS, ...BESIDE]);
    for (const key of keysOf('entry')) expect(helpFor('entry', key)?.like).toMatch(`${key}: `);
  });
});

/** Verbs of a later version, and names that every object has. */
const LATER = [
  'photo',
  'heard',
  'felt',
  'constructor',
  'toString',
  'valueOf',
  '__proto__',
  'hasOwnProperty',
  'x',
];

const anyVerb = fc
  .oneof(fc.constantFrom(...LATER), fc.stringMatching(/^[A-Za-z_][A-Za-z0-9_-]{0,12}$/))
  .filter((verb) => !keysOf('entry').includes(verb));

const anyValue = fc.constantFrom('all', '"two words"', '[1, 2]', '{a: b}', '', '~', '7', 'true');
const anyAbout = fc.subarray(Object.values(ABOUT));

describe('a verb that a later version writes', () => {
  it('is told as a fault at its entry, and everything else is read', () => {
    fc.assert(
      fc.property(anyVerb, anyValue, anyAbout, fc.boolean(), (verb, value, about, block) => {
        const pairs = [...STAMP.split(', '), ...about, `${verb}: ${value}`];
        const line = block ? `  - ${pairs.join('\n    ')}\n` : `  - {${pairs.join(', ')}}\n`;
        const text = HEAD + line + LAST;
        const faults = checkAll(text, 'a.yaml');
        const told = faults.filter((f) => f.severity === 'error');
        expect(
          told.map((f) => f.code),
          text,
        ).toContain('entry-verb');
        const at = HEAD.split('\n').length;
        const end = at + line.split('\n').length - 1;
        for (const f of told) expect(f.line >= at && f.line < end, `${text}${f.line}`).toBe(true);
        const { upper, entries } = readJob(text, 'a.yaml');
        expect(entries.map((e) => e.id)).toEqual(['abcdefgh']);
        expect(fold(upper, entries).pieces.get('cover')?.away).toBe('removed');
      }),
    );
  });

  it('beside one that is known, neither is guessed', () => {
    fc.assert(
      fc.property(anyVerb, anyValue, fc.constantFrom(...VERBS), (verb, value, known) => {
        // No key at all in a mapping of ours: told as an odd one, and the rest of its line is read.
        fc.pre(verb !== '__proto__');
        for (const line of linesOf(known)) {
          const text = `${HEAD}  ${line.slice(0, -1)}, ${verb}: ${value}}\n${LAST}`;
          const faults = checkAll(text, 'a.yaml');
          expect(
            faults.some((f) => f.severity === 'error'),
            text,
          ).toBe(true);
          expect(readJob(text, 'a.yaml').entries.map((e) => e.id)).toEqual(['abcdefgh']);
        }
      }),
    );
  });
});
