/** The script for bash in a real bash: what it offers is what putback says can stand there. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { PUTBACK, pinnedEnv } from './world.ts';

const folder = mkdtempSync(join(tmpdir(), 'putback-completions-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
writeFileSync(
  join(folder, 'my cover.yaml'),
  'putback: 1\njob: x\npieces: {alternator: {bolts: S S}, lever: {}}\ndiary:\n',
);

/** What bash offers behind these words. */
function offered(...words: string[]): string[] {
  const script = `
    putback() { '${process.execPath}' '${PUTBACK}' "$@"; }
    eval "$(putback completions bash)"
    COMP_WORDS=(putback "$@"); COMP_CWORD=$#
    _putback; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const run = spawnSync('bash', ['-c', script, 'bash', ...words], {
    cwd: folder,
    env: pinnedEnv(folder),
    encoding: 'utf8',
  });
  return run.stdout.split('\n').filter((line) => line !== '');
}

it('bash offers commands, files with blanks, pieces and holes', () => {
  expect(offered('sta')).toEqual(['status']);
  expect(offered('out', 'my')).toEqual(['my cover.yaml']);
  expect(offered('out', 'my cover.yaml', 'a')).toEqual(['alternator']);
  expect(offered('out', 'my cover.yaml', 'alternator', '')).toEqual(['1', '2']);
});
