import { afterEach, describe, expect, it, vi } from 'vitest';
import { zoneOf } from '../src/main.ts';

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
