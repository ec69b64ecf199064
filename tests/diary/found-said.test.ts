/** A line of a diary that was found is said as the diary says it. */
import { describe, expect, it } from 'vitest';
import { foundSaid } from '../../src/diary/found-said.ts';
import { jobOf, readJob } from '../../src/job/read.ts';

const AT = 'at: 2026-04-11T18:25:40+02:00';
const JOB = jobOf(
  readJob(
    `putback: 1
job: Left cover weeps oil
tasks: {drain: {do: Drain the oil}}
diary:
  - {${AT}, id: k3Vb9xQe, note: "bring the long socket"}
`,
    'job.yaml',
  ),
);

describe('what was found', () => {
  it.each([
    [
      `{${AT}, id: a1234567, piece: cover, hole: 2, state: stuck, says: "soaking"}`,
      '2 stuck; “soaking”',
    ],
    [`{${AT}, id: a1234567, piece: cover, hole: 4, tight: full, set: 10 N·m}`, '4 full, 10 N·m'],
    [`{${AT}, id: a1234567, piece: cover, removed: all, tray: cup 2}`, 'Off; bolts in cup 2'],
    [`{${AT}, id: a1234567, task: drain, done: done}`, 'Drain the oil: done'],
    [`{${AT}, id: a1234567, keep: k3Vb9xQe}`, 'Worth knowing next time: bring the long socket'],
  ])('%s', (line, say) => {
    expect(foundSaid(`- ${line}`, JOB)).toBe(say);
  });

  it('tells a task by its key where its job was not read, and leaves what needs another line as it stands', () => {
    expect(foundSaid(`- {${AT}, id: a1234567, task: drain, done: done}`, null)).toBe('drain: done');
    expect(foundSaid(`- {${AT}, id: a1234567, keep: k3Vb9xQe}`, null)).toBeNull();
  });

  it('leaves what is no entry as it stands', () => {
    expect(foundSaid('gasket: {what: HL-1142, once: true}', JOB)).toBeNull();
    expect(foundSaid('- {at: yesterday, note: hm}', JOB)).toBeNull();
  });
});
