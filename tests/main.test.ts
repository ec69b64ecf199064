import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { makeWorld, zoneOf } from '../src/main.ts';
import { printInstant } from '../src/model/time.ts';

afterEach(() => void vi.unstubAllEnvs());

describe('the zone of this machine', () => {
  it.each(['Europe/Berlin', 'America/Argentina/Ushuaia', 'Asia/Kathmandu'])('%s', (zone) => {
    // Node is asked where the system has no list of zones.
    vi.stubEnv('TZ', zone);
    expect(zoneOf(zone)).toBe(zone);
  });

  it.each([
    undefined,
    '',
    'UTC',
    'Europe/Nowhere',
    '../../etc/passwd',
    ':Europe/Berlin',
    'EST5EDT',
  ])('set to %j: one that Node knows', (set) => {
    const zone = zoneOf(set);
    expect(new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone).toBe(zone);
  });
});

describe('the clock of this machine', () => {
  it.each([
    'Europe/Berlin',
    'America/St_Johns',
    'Asia/Kathmandu',
    'Australia/Lord_Howe',
    'Africa/Monrovia',
  ])('%s: tells the offset that the calendar of all zones has', (zone) => {
    vi.stubEnv('TZ', zone);
    expect(makeWorld().zone).toBe(zone);
    const calendar = new Intl.DateTimeFormat('en', { timeZone: zone, timeZoneName: 'longOffset' });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4_102_444_800 }), (seconds) => {
        const [, offset] = /GMT(.*)$/.exec(calendar.format(seconds * 1000)) ?? [];
        const said = printInstant({ seconds, offset: 0, zone });
        expect(said.slice(19)).toBe(
          /^([+-]\d\d:\d\d)?$/.test(offset ?? '-') ? offset || '+00:00' : '+00:00',
        );
      }),
    );
  });

  it('where it is that of Greenwich', () => {
    vi.stubEnv('TZ', 'Etc/UTC');
    expect(makeWorld().zone).toBe('UTC');
  });
});
