import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fold } from '../../../src/job/fold/fold.ts';
import { readJob } from '../../../src/job/read.ts';
import { CARE_WORDS, MOMENTS } from '../../../src/model/types.ts';
import { gate } from '../../../src/plan/gates/gate.ts';
import { itemOf } from '../../../src/plan/gates/item-rows.ts';
import { SORTS, sortRow } from '../../../src/plan/tests/sorts.ts';
import { testList } from '../../../src/plan/tests/testlist.ts';

const FOLDER = join(import.meta.dirname, '../../../jobs');
const JOBS = readdirSync(FOLDER).filter((name) => name.endsWith('.yaml'));

describe('the items of every gate have a row', () => {
  it.each(JOBS)('%s', (name) => {
    const { upper, entries } = readJob(readFileSync(join(FOLDER, name), 'utf8'), name);
    const job = fold(upper, entries);
    let met = 0;
    for (const moment of MOMENTS) {
      for (const piece of [null, ...job.pieces.keys()]) {
        for (const { key } of gate(job, moment, piece, '2026-05-02T10:00:00+02:00').items) {
          const found = itemOf(key);
          expect(found, key).not.toBeNull();
          expect([found?.name, found?.about].filter((part) => part !== '').join('-')).toBe(key);
          met += 1;
        }
      }
    }
    expect(met).toBeGreaterThan(10);
  });

  it('the longest name is meant, and what is none is none', () => {
    expect(itemOf('part-back-cover')).toMatchObject({ name: 'part-back', about: 'cover' });
    expect(itemOf('part-gasket')).toMatchObject({ name: 'part', about: 'gasket' });
    expect(itemOf('loose')).toMatchObject({ name: 'loose', about: '' });
    expect(itemOf('loosely')).toBeNull();
    expect(itemOf('constructor')).toBeNull();
  });
});

describe('every sort of thing is known by something and tested', () => {
  it.each(SORTS)('%s', (sort) => {
    const { words, test } = sortRow(sort);
    expect(words === null ? CARE_WORDS.some((care) => care === sort) : words.test(sort)).toBe(true);
    // Its own words stand in for it in the file.
    expect(test.say).toMatch(test.covers);
    const care = words === null ? `, care: ${sort}` : '';
    const called = words === null ? 'thing' : sort;
    const text = `putback: 1
job: x
pieces: {p1: {name: A ${called}, bolts: S${care}}}
diary:
  - {at: 2026-04-11T18:25:40+02:00, id: k3Vb9xQe, piece: p1, out: S}
`;
    const { upper, entries, faults } = readJob(text, 'a.yaml');
    expect(faults).toEqual([]);
    const names = testList(fold(upper, entries), '2026-05-02T10:00:00+02:00').map((t) => t.test);
    expect(names).toContain(`p1-${test.key}`);
  });
});
