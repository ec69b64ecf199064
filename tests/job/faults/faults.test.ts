import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Code, printFault } from '../../../src/job/faults/faults.ts';
import { FAULTS } from '../../../src/job/faults/table.ts';
import { readWhole } from '../../../src/job/read.ts';
import type { Fault } from '../../../src/model/types.ts';
import { checkAll } from '../../../src/plan/check.ts';
import { ownPresses } from '../../../src/screens/show/own-keys.ts';
import { readBenchSettings, readUserSettings } from '../../../src/settings/settings.ts';

/** One minimal file for each fault, and beside it all that is said about it. */
const FOLDER = join(import.meta.dirname, '../../faults');
const CODES = Object.keys(FAULTS) as Code[];
const HEAD = 'putback: 1\njob: Left cover weeps oil\n';

/** Files that are long by nature. */
const LONG: Partial<Record<Code, () => string>> = {
  'too-big': () => `${HEAD}found: ${'x'.repeat(4_000_000)}\n`,
  'too-many-traced': () => {
    const names = Array.from({ length: 501 }, (_, i) => `  s${i}: Number ${i}`);
    return `${HEAD}suspects:\n${names.join('\n')}\n`;
  },
  more: () => `${HEAD}pieces:\n  cover: {under: [${'lid, '.repeat(502)}]}\n`,
};

function textOf(code: Code): string {
  return LONG[code]?.() ?? readFileSync(join(FOLDER, `${code}.yaml`), 'utf8');
}

/** Those of the settings of a bench, and of a user's own. */
const OF_A_BENCH: readonly Code[] = ['not-settings', 'bad-setting'];
const OF_A_USER: readonly Code[] = ['unknown-key-name', 'bad-press', 'press-clash', 'fixed-press'];

function faultsOf(code: Code): Fault[] {
  const file = `${code}.yaml`;
  if (OF_A_BENCH.includes(code)) return readBenchSettings(textOf(code), file).faults;
  if (!OF_A_USER.includes(code)) return checkAll(textOf(code), file);
  return readUserSettings(textOf(code), file, ({ keys }, report) => void ownPresses(keys, report))
    .faults;
}

describe('every fault is told whole: place, what is wrong, the line, the way out', () => {
  it.each(CODES)('%s', (code) => {
    const faults = faultsOf(code);
    const said = `${faults.map(printFault).join('\n\n')}\n`;
    const known = readFileSync(join(FOLDER, `${code}.txt`), 'utf8');
    // Five hundred times the same is compared by its ends.
    if (code === 'more') {
      expect(faults).toHaveLength(501);
      expect(`${[faults[0]!, faults[500]!].map(printFault).join('\n\n')}\n`).toBe(known);
    } else expect(said).toBe(known);
    expect(faults.map((f) => f.code)).toContain(code);
  });

  it('and every file there is about a fault of the table', () => {
    const names = readdirSync(FOLDER).map((name) => name.replace(/\.(yaml|txt)$/, ''));
    expect([...new Set(names)].sort()).toEqual([...CODES].sort());
    for (const code of CODES) expect(existsSync(join(FOLDER, `${code}.txt`)), code).toBe(true);
  });

  it('no text of the table has a brace that nothing fills, and none is empty', () => {
    for (const code of CODES) {
      const { say, fix } = FAULTS[code];
      expect(say, code).not.toBe('');
      expect(fix, code).not.toBe('');
      for (const fault of readWhole(textOf(code), 'a.yaml').faults) {
        expect(`${fault.say} ${fault.fix}`, code).not.toMatch(/undefined|null|NaN|\[object/);
      }
    }
  });

  it('with Windows line ends and a byte order mark the places stay the same', () => {
    for (const code of CODES.filter((c) => !LONG[c])) {
      const text = textOf(code);
      const places = (t: string) =>
        readWhole(t, 'a.yaml').faults.map((f) => `${f.code} ${f.line}:${f.column}`);
      const there = places(text);
      expect(places(text.replaceAll('\n', '\r\n')), code).toEqual(there);
      expect(places(`\uFEFF${text}`), code).toEqual(there);
    }
  });
});
