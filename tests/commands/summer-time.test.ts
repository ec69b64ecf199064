/**
 * A night in which the clock goes back or forward: what cures does so by real hours, and the same hour is told in the
 * evening and in the morning. Summer time of the European Union ends at 01:00 UTC on the last Sunday of October and begins
 * at 01:00 UTC on the last Sunday of March (Directive 2000/84/EC).
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { Pinned } from './pinned.ts';

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

const JOB = `putback: 1
job: Cover weeps
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S, torque: 10 N·m, joint: "sealant, open 10 min, cures 12 h"}
diary:
`;

/** The cover tight at this time. */
async function closed(at: string, zone?: string) {
  const folder = mkdtempSync(join(tmpdir(), 'putback-summer-'));
  folders.push(folder);
  writeFileSync(join(folder, 'job.yaml'), JOB);
  const pinned = new Pinned(folder, zone);
  for (const argv of [
    ['out', 'job.yaml', 'cover', '--all'],
    ['off', 'job.yaml', 'cover'],
    ['in', 'job.yaml', 'cover', '--all', '--kind', 'S'],
    ['tight', 'job.yaml', 'cover', '--all'],
    ['tight', 'job.yaml', 'cover', '--all'],
  ]) {
    expect((await pinned.run(...argv, '--at', at)).exit).toBe(0);
  }
  return async (now: string) => {
    const { out } = await pinned.run('status', 'job.yaml', '--at', now);
    return /until [^.;]*/.exec(out)?.[0] ?? null;
  };
}

describe('twelve hours across a change of the clock', () => {
  it('in October end an hour earlier by the clock, told so in the evening and in the morning', async () => {
    const told = await closed('2026-10-24T19:40:00+02:00', 'Europe/Berlin');
    expect(await told('2026-10-24T20:00:00+02:00')).toBe('until 06:40 tomorrow');
    expect(await told('2026-10-25T02:30:00+02:00')).toBe('until 06:40');
    expect(await told('2026-10-25T02:30:00+01:00')).toBe('until 06:40');
    expect(await told('2026-10-25T06:30:00+01:00')).toBe('until 06:40');
    expect(await told('2026-10-25T06:41:00+01:00')).toBeNull();
  });

  it('in March end an hour later by the clock', async () => {
    const told = await closed('2026-03-28T19:40:00+01:00', 'Europe/Berlin');
    expect(await told('2026-03-28T20:00:00+01:00')).toBe('until 08:40 tomorrow');
    expect(await told('2026-03-29T06:00:00+02:00')).toBe('until 08:40');
    expect(await told('2026-03-29T08:41:00+02:00')).toBeNull();
  });

  it('on any other night, and across midnight, are twelve by the clock', async () => {
    const told = await closed('2026-05-02T19:40:00+02:00', 'Europe/Berlin');
    expect(await told('2026-05-02T20:00:00+02:00')).toBe('until 07:40 tomorrow');
    expect(await told('2026-05-03T00:10:00+02:00')).toBe('until 07:40');
  });

  it('of a time with another offset than the zone has, that offset counts', async () => {
    const told = await closed('2026-10-24T19:40:00-05:00', 'Europe/Berlin');
    expect(await told('2026-10-24T20:00:00-05:00')).toBe('until 07:40 tomorrow');
  });

  it('without a zone the offset of now counts, and the hours are real ones', async () => {
    const told = await closed('2026-10-24T19:40:00+02:00');
    expect(await told('2026-10-24T20:00:00+02:00')).toBe('until 07:40 tomorrow');
    expect(await told('2026-10-25T06:30:00+01:00')).toBe('until 06:40');
    expect(await told('2026-10-25T06:41:00+01:00')).toBeNull();
  });
});
