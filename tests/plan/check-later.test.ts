/** What a later version may write: keys, verbs and shapes that this one does not know, in any spelling of YAML. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { printFault } from '../../src/job/faults/print.ts';
import { FAULTS } from '../../src/job/faults/table.ts';
import { fold } from '../../src/job/fold/fold.ts';
import { sayEntry } from '../../src/job/fold/say-entry.ts';
import { readJob } from '../../src/job/read.ts';
import { checkAll } from '../../src/plan/check.ts';
import { plan } from '../../src/plan/plan.ts';
import { anyChange, changed, fresh, plainCopy } from '../job/form/changes.ts';
import { EXAMPLE, FULL } from '../job/form/example.ts';
import { runs } from '../runs.ts';

const JOBS = join(import.meta.dirname, '../../jobs');
const TEXTS = [
  EXAMPLE,
  FULL,
  ...readdirSync(JOBS)
    .filter((name) => name.endsWith('.yaml') && name !== 'bench.yaml')
    .map((name) => readFileSync(join(JOBS, name), 'utf8')),
];
const SOURCES = TEXTS.map((text) => plainCopy(parse(text, { logLevel: 'silent' })));

const NOW = '2026-05-02T10:00:00+02:00';

/** A line more in the diary: a verb of tomorrow, behind it anything, beside it whatever else. */
const anyLater = fc.record({
  verb: fc.oneof(
    fc.constantFrom(
      'heard',
      'felt',
      'weighed',
      'constructor',
      'toString',
      '__proto__',
      'out',
      'in',
    ),
    fc.stringMatching(/^[a-z][a-z-]{0,10}$/),
  ),
  value: fc.oneof(
    fc.constantFrom<unknown>(null, true, 7, 1.5, '', 'all', [], {}, [['S']], { of: { any: [1] } }),
    fc.jsonValue({ maxDepth: 3 }),
  ),
  beside: fc.dictionary(
    fc.constantFrom('piece', 'hole', 'task', 'check', 'says', 'was', 'with', 'by', 'until'),
    fc.oneof(fc.constantFrom<unknown>('cover', 1, 4, null, ['1', 2], {}), fc.string()),
    { maxKeys: 4 },
  ),
});

/** As a program, an editor or a person writes it: in blocks, in braces, as JSON, with the ends of lines of Windows. */
const SPELLINGS: readonly ((data: unknown) => string)[] = [
  (data) => stringify(data),
  (data) => stringify(data, { collectionStyle: 'flow', lineWidth: 60 }),
  (data) => JSON.stringify(data),
  (data) => stringify(data, { defaultStringType: 'QUOTE_SINGLE' }).replace(/\n/g, '\r\n'),
  (data) => `# written by a later version\n---\n${stringify(data)}...\n`,
];

describe('check of a file that a later version wrote', () => {
  it('never throws: each fault has its code, its place in the text, and a way out', () => {
    const met = new Map<string, number>();
    fc.assert(
      fc.property(
        fc.constantFrom(...SOURCES),
        fc.array(anyChange, { maxLength: 4 }),
        fc.array(anyLater, { maxLength: 3 }),
        fc.constantFrom(1, 1, 2, '1.1', null),
        fc.constantFrom(...SPELLINGS),
        (source, changes, later, version, spelled) => {
          let data: unknown = structuredClone(source);
          for (const change of changes) data = changed(data, fresh(change));
          if (typeof data === 'object' && data !== null && !Array.isArray(data)) {
            const file = data as Record<string, unknown>;
            if (version !== 1) file.putback = version;
            const lines = later.map(({ verb, value, beside }, i) => ({
              at: NOW,
              id: `later${String(i).padStart(3, '0')}`,
              ...beside,
              [verb]: value,
            }));
            if (lines.length > 0)
              file.diary = [...(Array.isArray(file.diary) ? file.diary : []), ...lines];
          }
          const text = spelled(data);
          const faults = checkAll(text, 'a.yaml');
          const count = text.split(/\r?\n/).length;
          for (const f of faults) {
            met.set(f.code, (met.get(f.code) ?? 0) + 1);
            expect(Object.keys(FAULTS)).toContain(f.code);
            expect(f.line >= 1 && f.line <= count && f.column >= 1, `${f.line}: ${text}`).toBe(
              true,
            );
            expect(f.say.length * f.fix.length, f.code).toBeGreaterThan(0);
            expect(printFault(f)).toContain(f.say);
          }
          // And what is read of it stands, is told and is planned.
          const { upper, entries } = readJob(text, 'a.yaml');
          const job = fold(upper, entries);
          for (const entry of entries) expect(sayEntry(entry, job).length).toBeGreaterThan(0);
          expect(plan(job, NOW).steps.length).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: runs(200) },
    );
    // What a later version is most likely to write was met, or this says little.
    for (const code of ['entry-verb', 'unknown-key', 'wrong-type', 'newer-version'])
      expect(met.get(code) ?? 0, code).toBeGreaterThan(4);
    expect(met.size).toBeGreaterThan(15);
  });
});
