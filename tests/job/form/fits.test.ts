import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fits } from '../../../src/job/form/fits.ts';
import { upperShape } from '../../../src/job/form/shape.ts';
import { makeTrees } from '../../../src/job/form/trees.ts';
import { openYaml } from '../../../src/job/yaml/doc.ts';
import { type Plain, plainSpot } from '../../../src/job/yaml/spot.ts';
import { runs } from '../../runs.ts';
import { EXAMPLE, FULL } from './example.ts';

const trees = makeTrees();
const FOLDER = join(import.meta.dirname, '../../faults');
const TEXTS = [
  EXAMPLE,
  FULL,
  ...readdirSync(FOLDER)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => readFileSync(join(FOLDER, name), 'utf8')),
];
const DATA = TEXTS.flatMap((text): Plain[] => {
  const { root } = openYaml(text);
  return root ? [plainSpot(root)] : [];
});

/** Both say the same of the data; what they say. */
function agree(data: Plain): boolean {
  const ours = fits(trees.nodes, trees.upper, data);
  expect(ours, JSON.stringify(data).slice(0, 2000)).toBe(upperShape().safeParse(data).success);
  return ours;
}

const plain: fc.Arbitrary<Plain> = fc.letrec<{ plain: Plain }>((tie) => ({
  plain: fc.oneof(
    { depthSize: 'small' },
    fc.constantFrom('1', 'true', 'M6x20', '', 'A', 'cover', 'none', 'fire', '__proto__'),
    fc.constant(null),
    fc.array(tie('plain'), { maxLength: 3 }),
    fc.dictionary(fc.constantFrom('1', 'A', 'note', 'what', 'do', 'kind', 'm-1'), tie('plain')),
  ),
})).plain;

/** The data with another value somewhere in it, a key gone, or one that is new. */
function changed(data: Plain, where: readonly number[], put: Plain): Plain {
  const [step, ...rest] = where;
  if (step === undefined || data === null || typeof data === 'string') return put;
  if (Array.isArray(data)) {
    const at = step % (data.length + 1);
    return [...data.slice(0, at), changed(data[at] ?? null, rest, put), ...data.slice(at + 1)];
  }
  const keys = Object.keys(data);
  const key = keys[step % (keys.length + 1)];
  const { [key ?? '']: old = null, ...others } = data;
  if (key === undefined) return { ...others, odd: put };
  if (step % 7 === 6) return others;
  return { ...others, [key]: changed(old, rest, put) };
}

describe('whether a file has its shape', () => {
  it('is said of every example and faulty file as the shapes themselves say it', () => {
    const said = DATA.map(agree);
    expect(said.filter((good) => good).length).toBeGreaterThan(10);
    expect(said.filter((good) => !good).length).toBeGreaterThan(10);
  });

  it('is said of changed files as the shapes say it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...DATA),
        fc.array(fc.nat({ max: 40 }), { minLength: 1, maxLength: 5 }),
        plain,
        (data, where, put) => void agree(changed(data, where, put)),
      ),
      { numRuns: runs(400) },
    );
  });
});
