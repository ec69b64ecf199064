import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { findUser, oddInUser } from '../../src/diary/user.ts';

function home() {
  const folder = mkdtempSync(join(tmpdir(), 'putback-user-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  mkdirSync(join(folder, 'putback'));
  const file = join(folder, 'putback', 'settings.yaml');
  const odd = () => oddInUser(findUser({ XDG_CONFIG_HOME: folder }));
  return { folder, file, odd, find: () => findUser({ XDG_CONFIG_HOME: folder }) };
}

it('settings that lie elsewhere, behind a link of their user, are read', () => {
  const { folder, file, odd, find } = home();
  writeFileSync(join(folder, 'mine.yaml'), 'paper: letter\n');
  symlinkSync('../mine.yaml', file);
  expect(find().settings.paper).toBe('letter');
  expect(odd()).toBe(null);
});

it('a link that leads nowhere is told, and no settings at all are nothing odd', () => {
  const { file, odd } = home();
  expect(odd()).toBe(null);
  symlinkSync('../none.yaml', file);
  expect(odd()).toBe(`settings.yaml is a link, and no file is there where it leads (${file}).`);
});

it('a link to what is no plain file is told', () => {
  const { file, odd } = home();
  symlinkSync('/dev/zero', file);
  expect(odd()).toContain('not a plain file');
});

it('of several faults the first is told, and how to see them all', () => {
  const { file, odd } = home();
  writeFileSync(file, 'paper: a5\ncolour: none\n');
  expect(odd()).toBe(
    `Your settings, line 1: a5 is no word for paper. One of: a4, letter. putback check ${file} tells all 2. (${file})`,
  );
});
