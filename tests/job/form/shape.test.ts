import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { printEntry } from '../../../src/job/diary/entry.ts';
import { FAULTS } from '../../../src/job/faults/table.ts';
import { helpFor, keysOf, OWNERS, type Owner } from '../../../src/job/form/help.ts';
import { jsonSchema } from '../../../src/job/form/schema.made.ts';
import { printSchema } from '../../../src/job/form/schema.ts';
import { fileShape } from '../../../src/job/form/shape.ts';
import { readWhole } from '../../../src/job/read.ts';
import { openYaml } from '../../../src/job/yaml/doc.ts';
import { plainSpot } from '../../../src/job/yaml/spot.ts';
import { VERBS } from '../../../src/model/types.ts';
import { PLACES, verbRow } from '../../../src/model/verbs/verbs.ts';
import { runs } from '../../runs.ts';
import { anyChange, changed, fresh, plainCopy } from './changes.ts';
import { EXAMPLE, FULL } from './example.ts';
import { anyEntry } from './make.ts';

/** A general-purpose validator of JSON Schema (draft 2020-12), the same that many editors use. */
const validate = new Ajv2020({ allErrors: false, strict: true, allowUnionTypes: true }).compile(
  jsonSchema(),
);

const shape = fileShape();

function agree(data: unknown): boolean {
  const ours = shape.safeParse(data).success;
  expect(validate(data), JSON.stringify(data)?.slice(0, 2000)).toBe(ours);
  return ours;
}

/** The file's data as the program sees it: every scalar a text. */
function asTexts(text: string): unknown {
  const { root } = openYaml(text);
  return root && plainSpot(root);
}

/** The file's data as an editor sees it: figures, true and false, null. */
function asValues(text: string): unknown {
  try {
    return parse(text, { logLevel: 'silent' });
  } catch {
    return null;
  }
}

const FOLDER = join(import.meta.dirname, '../../faults');
const FAULTY = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => [name, readFileSync(join(FOLDER, name), 'utf8')] as const);

/** Codes that say that the shape is wrong. */
const SHAPE = new Set<string>(
  [
    [
      'missing',
      'lacks',
      'unknown-key',
      'wrong-type',
      'bad-choice',
      'bad-name',
      'bad-kind',
      'task-verb',
    ],
    ['no-version', 'bad-version', 'newer-version', 'not-a-job'],
    ['bad-entry', 'entry-verb', 'entry-place', 'bad-time', 'bad-id'],
  ].flat(),
);

describe('an editor with the schema and the program say the same of a file', () => {
  it.each([
    ['the example', EXAMPLE],
    ['the full spelling', FULL],
  ])('%s is right for both, with texts and with values', (_what, text) => {
    expect(agree(asTexts(text))).toBe(true);
    expect(agree(asValues(text))).toBe(true);
  });

  it.each(FAULTY)('%s', (_name, text) => {
    agree(asTexts(text));
    agree(asValues(text));
  });

  it('any diary', () => {
    fc.assert(
      fc.property(fc.array(anyEntry), (entries) => {
        const text = `putback: 1\njob: x\ndiary:\n${entries.map((e) => `  ${printEntry(e)}\n`).join('')}`;
        expect(agree(asTexts(text))).toBe(true);
        expect(agree(asValues(text))).toBe(true);
      }),
    );
  });

  it('an entry with any verb, or two, about any places', () => {
    const values: Record<string, unknown> = { at: '2026-05-02T10:11:05+02:00', id: 'k3Vb9xQe' };
    for (const place of PLACES) values[place] = place === 'hole' ? 2 : 'cover';
    for (const verb of VERBS) {
      const { value } = verbRow(verb);
      values[verb] = typeof value !== 'string' ? value[0] : value === 'id' ? 'k3Vb9xQe' : 'S';
    }
    const verdicts = { right: 0, wrong: 0 };
    const entry = (keys: readonly string[]) => {
      const diary = [Object.fromEntries(['at', 'id', ...keys].map((key) => [key, values[key]]))];
      verdicts[agree({ putback: 1, job: 'x', diary }) ? 'right' : 'wrong'] += 1;
    };
    for (let set = 0; set < 2 ** PLACES.length; set += 1) {
      const about = PLACES.filter((_, i) => set & (2 ** i));
      entry(about);
      for (const verb of VERBS) entry([...about, verb]);
      entry([...about, ...VERBS.slice(set % VERBS.length).slice(0, 2)]);
    }
    // A set of places that a verb can be about is right, and none other.
    const sets = VERBS.flatMap((verb) =>
      verbRow(verb).about.flatMap((places) => {
        const may = places.filter((place) => !place.endsWith('!')).length;
        return Array.from({ length: 2 ** may }, (_, i) => `${verb} ${places} ${i}`);
      }),
    );
    expect(verdicts.right).toBe(new Set(sets).size);
    expect(verdicts.wrong).toBeGreaterThan(1500);
  });

  it('any file with something changed in its data', () => {
    const sources = [EXAMPLE, FULL].flatMap((text) => [asTexts(text), asValues(text)]);
    let good = 0;
    let bad = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...sources),
        fc.array(anyChange, { minLength: 1, maxLength: 3 }),
        (source, changes) => {
          let data: unknown = structuredClone(plainCopy(source));
          for (const change of changes) data = changed(data, fresh(change));
          if (agree(data)) good += 1;
          else bad += 1;
        },
      ),
      { numRuns: runs(1000) },
    );
    // Both answers are met often, or the property says little.
    expect(Math.min(good, bad)).toBeGreaterThan(100);
  });
});

describe('the reader has a fault for every file that the shape refuses, and none for the others', () => {
  const met = { right: 0, wrong: 0 };
  const verdict = (text: string) => {
    const { faults, unreadable } = readWhole(text, 'a.yaml');
    if (unreadable) return;
    const { root } = openYaml(text);
    const data = root ? plainSpot(root) : {};
    const right = shape.safeParse(data).success;
    const told = faults.filter((f) => SHAPE.has(f.code));
    const errors = faults.filter((f) => f.severity === 'error');
    met[right ? 'right' : 'wrong'] += 1;
    if (right) expect(told, text).toEqual([]);
    else expect(errors.length, text).toBeGreaterThan(0);
  };

  it.each(FAULTY)('%s', (_name, text) => {
    verdict(text);
  });

  it('for files with something changed in their data', () => {
    const sources = [asTexts(EXAMPLE), asTexts(FULL)];
    fc.assert(
      fc.property(
        fc.constantFrom(...sources),
        fc.array(anyChange, { minLength: 1, maxLength: 3 }),
        (source, changes) => {
          let data: unknown = structuredClone(plainCopy(source));
          for (const change of changes) data = changed(data, fresh(change));
          // JSON is YAML; null stands for an empty place, which JSON cannot leave out.
          verdict(JSON.stringify(data).replace(/null/g, ''));
        },
      ),
      { numRuns: runs(500) },
    );
    expect(Math.min(met.right, met.wrong)).toBeGreaterThan(50);
  });
});

describe('the schema', () => {
  it('describes every key that it knows, in one line', () => {
    const text = JSON.stringify(jsonSchema());
    for (const owner of OWNERS) {
      for (const key of keysOf(owner)) expect(text).toContain(helpFor(owner, key)?.is);
    }
  });

  it('names its draft and refers to nothing outside', () => {
    const schema = jsonSchema() as Record<string, unknown>;
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(JSON.stringify(schema)).not.toContain('"$ref":"http');
  });

  it('says what it shares once, and is small enough to be read', () => {
    expect(JSON.parse(printSchema())).toEqual(jsonSchema());
    // A quarter of what it was when each entry said all of its keys: they stand once, and what a verb is about apart.
    expect(Buffer.byteLength(printSchema())).toBeLessThan(40_000);
    const { $defs } = jsonSchema() as { $defs: Record<string, unknown> };
    const said = JSON.stringify(jsonSchema());
    for (const name of Object.keys($defs)) {
      // What is met once stands where it is met, but for the mappings and kinds of values, which have names.
      expect(said.includes(`"#/$defs/${name}"`), name).toBe(true);
      expect(name).not.toMatch(/^__/);
    }
  });

  it('every example of the help is right', () => {
    for (const key of keysOf('file')) {
      const like = helpFor('file', key)?.like ?? '';
      const head = key === 'putback' || key === 'job' ? '' : `putback: 1\njob: x\n`;
      const text = `${head}${like}\n${key === 'putback' ? 'job: x\n' : key === 'job' ? 'putback: 1\n' : ''}`;
      const { faults } = readWhole(text, 'a.yaml');
      const odd = faults.filter((f) => !/^(unknown|late)/.test(f.code));
      expect(odd, like).toEqual([]);
    }
    const within = {
      piece: (like: string) =>
        `pieces:\n  cover:\n    ${like === 'map: |' ? 'map: |\n      1 2' : like}`,
      hole: (like: string) => `pieces:\n  cover:\n    holes:\n      4:\n        ${like}`,
      kind: (like: string) => `bolts:\n  S:\n    ${like}`,
      buy: (like: string) => `buy:\n  gasket:\n    ${like}`,
    };
    for (const [owner, wrap] of Object.entries(within)) {
      for (const key of keysOf(owner as Owner)) {
        const like = helpFor(owner as Owner, key)?.like ?? '';
        const { faults } = readWhole(`putback: 1\njob: x\n${wrap(like)}\n`, 'a.yaml');
        expect(
          faults.filter((f) => !f.code.startsWith('unknown')),
          like,
        ).toEqual([]);
      }
    }
  });

  it('no code is left out of the list of what the shape can say', () => {
    for (const code of SHAPE) expect(Object.keys(FAULTS)).toContain(code);
  });
});
