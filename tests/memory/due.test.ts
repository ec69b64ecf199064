import { describe, expect, it } from 'vitest';
import { fold } from '../../src/job/fold/fold.ts';
import { readJob } from '../../src/job/read.ts';
import { calendarText } from '../../src/memory/calendar.ts';
import { type BenchJob, type Due, dueList, readingOf } from '../../src/memory/due.ts';
import { backAfter } from '../../src/plan/next/back.ts';
import { noteRows } from '../../src/plan/next/note.ts';
import { testList } from '../../src/plan/tests/testlist.ts';

const NOW = '2026-05-02T10:11:05+02:00';

function jobOf(file: string, text: string): BenchJob {
  const { upper, entries, faults } = readJob(text, file);
  expect(faults).toEqual([]);
  return { file, job: fold(upper, entries) };
}

/** A cover that was off and is tight again on the 1st of April 2026, with these tasks. */
const cover = (machine: string, tasks: string, more = '', passes = '') =>
  jobOf(
    'cover.yaml',
    `putback: 1
job: Cover weeps
machine: ${machine}
pieces:
  cover: {bolts: S S${passes}}
tasks:
${tasks}
diary:
  - {at: 2026-04-01T10:00:00+02:00, id: mark0001, piece: cover, out: S}
  - {at: 2026-04-01T10:00:01+02:00, id: mark0002, piece: cover, removed: all}
  - {at: 2026-04-01T10:01:00+02:00, id: mark0003, piece: cover, in: S}
  - {at: 2026-04-01T10:02:00+02:00, id: mark0004, piece: cover, tight: snug}
  - {at: 2026-04-01T10:03:00+02:00, id: mark0005, piece: cover, tight: full}
${more}`,
  );

const one = (task: string, all: readonly Due[]) => all.find((d) => d.task === task);
const TASKS = `  oil: {do: Change the oil, when: after 50 km, after: cover on}
  week: {test: Bolts, when: after 3 weeks, after: cover on}
  year: {test: Belt, when: after 1 year, after: cover on}
  season: {do: Look again, when: next season, after: cover on}
  hours: {test: Filter, when: after 10 h of running, after: cover on}`;

describe('what follows from a job', () => {
  it('is due by the calendar, from the day the piece was back', () => {
    const all = dueList([cover('Hollin 400, 1000 km', TASKS)], NOW);
    expect(one('week', all)).toMatchObject({ by: 'days', due: '2026-04-22', state: 'due' });
    expect(one('year', all)).toMatchObject({ by: 'days', due: '2027-04-01', state: 'later' });
    expect(one('season', all)).toMatchObject({ by: 'days', due: '2026-10-01', state: 'later' });
  });

  it('what names no piece follows from all of the work, and nothing is due before there was any', () => {
    const tasks = `  look: {test: Look at the belt, when: after 6 months}
  oil: {do: Change the oil, when: after 2 weeks}`;
    const all = dueList([cover('Hollin 400, 1000 km', tasks)], NOW);
    expect(one('look', all)).toMatchObject({ due: '2026-10-01', state: 'later' });
    expect(one('oil', all)).toMatchObject({ due: '2026-04-15', state: 'due' });
    const fresh = jobOf('f.yaml', `putback: 1\njob: Belt\ntasks:\n${tasks}\ndiary:\n`);
    expect(dueList([fresh], NOW)).toMatchObject([{ task: 'look', due: null, state: 'later' }]);
  });

  it('says the same as the job itself does: status and its note', () => {
    const job = cover(
      'Hollin 400, 1000 km',
      `${TASKS}\n  soon: {test: Dry, when: next day, after: cover on}`,
    );
    for (const now of [NOW, '2026-04-01T12:00:00+02:00', '2027-05-02T10:00:00+02:00']) {
      const due = dueList([job], now).filter((d) => d.task !== 'oil' && d.task !== 'season');
      const said = testList(job.job, now).filter((t) => t.state === 'due' || t.state === 'later');
      expect(due.map((d) => [d.task, d.state]).sort()).toEqual(
        said.map((t) => [t.test, t.state]).sort(),
      );
      const note = noteRows(job.job, backAfter(job.job, now), now);
      const tests = note.find((r) => r.label === 'Test now')?.texts ?? [];
      expect(tests.includes('Belt')).toBe(due.some((d) => d.task === 'year' && d.state === 'due'));
    }
  });

  it('in a year is no part of the work: nothing says that it is ready then', () => {
    const { job } = cover('Hollin 400, 1000 km', TASKS);
    expect(backAfter(job, '2026-05-02T10:00:00+02:00').finish).toBeNull();
  });

  it('a span that no calendar has is told, makes no date, and stays until it is put right', () => {
    const tasks = `  odd: {test: Belt, when: after -5 days, after: cover on}
  far: {do: Oil, when: after 99999999999 years, after: cover on}`;
    const text = cover('Hollin 400, 1000 km', tasks);
    const odd = dueList([text], NOW).filter((d) => d.task !== 'cover-weeps');
    expect(odd).toMatchObject([
      { task: 'far', odd: '99999999999 years', due: null, at: null, state: 'due' },
      { task: 'odd', odd: '-5 days', due: null, at: null, state: 'due' },
    ]);
  });

  it('or by the counter, from what it said then to what it says now in any job of the machine', () => {
    const first = cover('Hollin 400, 1000 km', TASKS);
    expect(one('oil', dueList([first], NOW))).toMatchObject({
      by: 'distance',
      at: '1050 km',
      left: '50 km',
      state: 'later',
    });
    const read = (km: number) =>
      jobOf(
        'later.yaml',
        `putback: 1\njob: Later\nmachine: hollin 400, ${km} km\ndiary:\n  - {at: 2026-04-20T10:00:00+02:00, id: mark0009, reading: ${km} km}\n`,
      );
    expect(one('oil', dueList([first, read(1049)], NOW))).toMatchObject({
      left: '1 km',
      state: 'later',
    });
    expect(one('oil', dueList([first, read(1050)], NOW))).toMatchObject({
      left: '0 km',
      state: 'due',
    });
    expect(readingOf([first, read(1049)], first.job)).toMatchObject({ value: 1049, unit: 'km' });
  });

  it('hours are what an hour meter shows; without one, and of what cures, they are those of the clock', () => {
    const tasks = `  oil: {do: Change the oil, when: after 50 h, after: cover on}
  edge: {test: Edge, when: cured after 24 h, after: cover on}
  ride: {test: Bolts, when: after 30 min of use, after: cover on}`;
    const met = dueList([cover('Velde GS 90, 1987, 12100 h', tasks)], NOW);
    expect(one('oil', met)).toMatchObject({
      by: 'hours',
      at: '12150 h',
      due: null,
      state: 'later',
    });
    expect(one('edge', met)).toMatchObject({ by: 'days', due: '2026-04-02', state: 'due' });
    expect(one('ride', met)).toMatchObject({ by: 'hours', at: '12100.5 h' });
    const run = `  - {at: 2026-05-01T10:00:00+02:00, id: mark0006, reading: 12151 h}\n`;
    expect(one('oil', dueList([cover('Velde GS 90, 12100 h', tasks, run)], NOW))).toMatchObject({
      left: '-1 h',
      state: 'due',
    });
    const clock = dueList([cover('Velde GS 90, 1000 km', tasks)], NOW);
    expect(one('oil', clock)).toMatchObject({ by: 'days', due: '2026-04-03', state: 'due' });
  });

  it('a counter of hours is none of km; what no counter tells is later, and no figure is made up', () => {
    const all = dueList([cover('Hollin 400, 1000 km', TASKS)], NOW);
    expect(one('hours', all)).toMatchObject({ by: 'hours', at: null, left: null, state: 'later' });
    const hours = dueList([cover('Ostrell 280, 100 h', TASKS)], NOW);
    expect(one('hours', hours)).toMatchObject({ at: '110 h', state: 'later' });
    expect(one('oil', hours)).toMatchObject({ by: 'distance', at: null, state: 'later' });
  });

  it("another machine's counter says nothing: two of one model with numbers of their own", () => {
    const first = cover('Hollin 400, 1000 km\nmachine-id: A1', TASKS);
    const other = jobOf(
      'other.yaml',
      'putback: 1\njob: Other\nmachine: Hollin 400, 9000 km\nmachine-id: B2\ndiary:\n',
    );
    expect(one('oil', dueList([first, other], NOW))).toMatchObject({ state: 'later' });
  });

  it('bolts that are to be looked at again after heat or a distance', () => {
    const passes = ', passes: [snug, full, "again after 100 km"]';
    const all = dueList([cover('Hollin 400, 1000 km', '  none: {do: x}', '', passes)], NOW);
    expect(one('cover-again', all)).toMatchObject({ when: 'after 100 km', at: '1100 km' });
    const heat = ', passes: [snug, full, "again after the first heat"]';
    const hot = dueList([cover('Hollin 400, 1000 km', '  none: {do: x}', '', heat)], NOW);
    expect(one('cover-again', hot)).toMatchObject({ when: 'after the first heat', by: 'use' });
  });

  it('what is done, or does not follow yet, is not listed', () => {
    const done = '  - {at: 2026-04-25T10:00:00+02:00, id: mark0006, task: oil, done: done}\n';
    const all = dueList([cover('Hollin 400, 1000 km', TASKS, done)], NOW);
    expect(one('oil', all)).toBeUndefined();
    const open = '  - {at: 2026-04-25T10:00:00+02:00, id: mark0006, piece: cover, out: S}\n';
    const again = dueList([cover('Hollin 400, 1000 km', TASKS, open)], NOW);
    expect(again.map((d) => d.task)).toEqual([]);
  });
});

/** Lines as RFC 5545, 3.1 has them: unfolded, each a name, parameters and a value. */
function contentLines(text: string): string[] {
  expect(text.endsWith('\r\n')).toBe(true);
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  return text.replaceAll('\r\n ', '').split('\r\n').slice(0, -1);
}

/** The rules of RFC 5545 for what is in the file; each with its section. */
function checkCalendar(text: string): Record<string, string>[] {
  const lines = contentLines(text);
  expect(lines[0]).toBe('BEGIN:VCALENDAR');
  expect(lines.at(-1)).toBe('END:VCALENDAR');
  // 3.6: version and product, each once, and a component at least (a calendar of nothing has none).
  for (const must of ['VERSION:2.0', 'PRODID:'])
    expect(lines.filter((l) => l.startsWith(must))).toHaveLength(1);
  const parts: Record<string, string>[] = [];
  let part: Record<string, string> | null = null;
  for (const line of lines.slice(1, -1)) {
    const [, name = '', value = ''] = /^([A-Z-]+(?:;[A-Z]+=[A-Z-]+)*):(.*)$/s.exec(line) ?? [];
    expect(name, line).not.toBe('');
    if (name === 'BEGIN') part = { is: value };
    else if (name === 'END') {
      expect(part?.is).toBe(value);
      if (part) parts.push(part);
      part = null;
    } else if (part) {
      // 3.6.1, 3.6.2: none of these more than once.
      expect(part[name]).toBeUndefined();
      part[name] = value;
    }
  }
  expect(part).toBeNull();
  for (const p of parts) {
    expect(['VEVENT', 'VTODO']).toContain(p.is);
    // 3.6.1: UID and DTSTAMP; 3.3.5, form 2.
    expect(p.UID).toMatch(/\S/);
    expect(p.DTSTAMP).toMatch(/^\d{8}T\d{6}Z$/);
    // 3.6.1: without METHOD an event has a start; 3.3.4.
    if (p.is === 'VEVENT') expect(p['DTSTART;VALUE=DATE']).toMatch(/^\d{8}$/);
    // 3.3.11: no bare comma, semicolon or backslash.
    for (const key of ['SUMMARY', 'DESCRIPTION'])
      expect(p[key]?.replace(/\\[\\;,nN]/g, '')).not.toMatch(/[\\;,]|\p{Cc}/u);
  }
  expect(new Set(parts.map((p) => p.UID)).size).toBe(parts.length);
  return parts;
}

const said = (text = '') => text.replace(/\\n/gi, '\n').replace(/\\([\\;,])/g, '$1');

describe('as a file for calendars', () => {
  it('keeps the rules of RFC 5545, whatever the texts are', () => {
    const odd = `  oil: {do: "Öl, 2,1 l; \\\\ \\"x\\" ${'läuft und läuft '.repeat(20)}", when: after 3 weeks, after: cover on}`;
    const all = dueList(
      [cover('Hollin 400, 1000 km', `${odd}\n${TASKS.split('\n').slice(1).join('\n')}`)],
      NOW,
    );
    const parts = checkCalendar(calendarText(all, NOW));
    expect(parts).toHaveLength(all.length);
    const oil = all.find((d) => d.task === 'oil');
    expect(parts.map((p) => said(p.SUMMARY))).toContain(`Hollin 400: ${oil?.say}`);
    expect(parts.find((p) => p.SUMMARY?.includes('Belt'))).toMatchObject({
      is: 'VEVENT',
      'DTSTART;VALUE=DATE': '20270401',
      DTSTAMP: '20260502T081105Z',
    });
    expect(parts.find((p) => p.SUMMARY?.includes('Filter'))?.is).toBe('VTODO');
  });

  it('of the same things twice has the same names', () => {
    const all = dueList([cover('Hollin 400, 1000 km', TASKS)], NOW);
    const uids = (text: string) => checkCalendar(text).map((p) => p.UID);
    expect(uids(calendarText(all, '2026-05-09T10:00:00Z'))).toEqual(uids(calendarText(all, NOW)));
  });

  it('a note on the piece moves no day', () => {
    const note =
      '  - {at: 2026-11-29T10:00:00+01:00, id: mark0009, piece: cover, note: looked fine}';
    const before = dueList([cover('Hollin 400 Twin', TASKS)], NOW);
    const after = dueList([cover('Hollin 400 Twin', TASKS, note)], NOW);
    expect(after.map(({ task, due, at }) => [task, due, at])).toEqual(
      before.map(({ task, due, at }) => [task, due, at]),
    );
  });

  it('a calendar is made on a machine whose zone is known too', () => {
    const all = dueList([cover('Hollin 400 Twin', TASKS)], NOW);
    const there = '2026-05-02T10:11:05+02:00[Europe/Berlin]';
    expect(calendarText(all, there)).toBe(calendarText(all, NOW));
    expect(calendarText(all, there)).toContain('DTSTAMP:20260502T081105Z');
  });
});
