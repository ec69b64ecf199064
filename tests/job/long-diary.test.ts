/** A diary of many years: each line as the program writes it, and one that an editor changed. */
import { expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { MOST_CHARACTERS } from '../../src/job/yaml/doc.ts';

const LINES = 100_000;
const AT = '2026-05-02T10:11:05+02:00';
const idOf = (n: number) => `a${n.toString(36).padStart(7, '0')}`;
const line = (n: number) =>
  `  - {at: ${AT}, id: ${idOf(n)}, note: "line ${n} of what was written"}`;
const HEAD = ['putback: 1', 'job: Long', 'pieces: {cover: {bolts: S S}}', 'diary:'];
const textOf = (lines: readonly string[]) => `${[...HEAD, ...lines].join('\n')}\n`;
const lines = Array.from({ length: LINES }, (_, n) => line(n));

it('100,000 lines are read', () => {
  const text = textOf(lines);
  expect(text.length).toBeGreaterThan(2 * MOST_CHARACTERS);
  const { entries, faults, unreadable } = readJob(text, 'long.yaml');
  expect([faults, unreadable, entries.length]).toEqual([[], false, LINES]);
  expect(entries.at(-1)?.id).toBe(idOf(LINES - 1));
});

it('a line of it that was changed by hand is named, with the way out', () => {
  const changed = lines.with(70_000, '  - {id: by-hand1, note: no time}');
  const { faults, unreadable } = readJob(textOf(changed), 'long.yaml');
  expect(unreadable).toBe(true);
  expect(faults).toMatchObject([{ code: 'too-big', line: HEAD.length + 70_001 }]);
  expect(faults[0]?.fix).toContain('written as the others are');
});
