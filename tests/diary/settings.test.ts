import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { ownSettings } from '../../src/diary/settings.ts';

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'putback-settings-'));
  mkdirSync(join(home, '.config/putback'), { recursive: true });
});
afterEach(() => rmSync(home, { recursive: true }));
const settings = (text: string) => {
  writeFileSync(join(home, '.config/putback/settings.yaml'), text);
  return ownSettings({ HOME: home });
};

it('names other benches, from the home, from the root, from beside the settings', () => {
  expect(settings('benches: [~/repairs, /srv/club, ../x]')).toEqual({
    benches: [join(home, 'repairs'), '/srv/club', join(home, '.config/x')],
    unread: null,
  });
  expect(settings('benches: ~/repairs').benches).toEqual([join(home, 'repairs')]);
});

it('none, or without a home: no benches, and nothing to say', () => {
  expect(ownSettings({ HOME: join(home, 'nobody') })).toEqual({ benches: [], unread: null });
  expect(ownSettings({})).toEqual({ benches: [], unread: null });
});

it('what cannot be read is said', () => {
  for (const odd of ['benches: {a: b}', 'benches: [[x]]', 'benches: [', 'just text'])
    expect(settings(odd)).toMatchObject({
      benches: [],
      unread: expect.stringContaining('benches'),
    });
});
