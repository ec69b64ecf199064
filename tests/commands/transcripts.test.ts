/**
 * Plays the transcripts of this folder: what stands behind `$` is run, and everything it prints, with its exit
 * code where that is not 0, must be what stands below. `UPDATE=1` writes them anew, to be read before a commit.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { Pinned } from './pinned.ts';

const here = join(import.meta.dirname, 'transcripts');
const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** Words of a line as a shell would split them: blanks, single and double quotes. */
function words(line: string): string[] {
  const found: string[] = [];
  for (const [, double, single, bare] of line.matchAll(/"((?:[^"\\]|\\.)*)"|'([^']*)'|(\S+)/g)) {
    found.push(double?.replaceAll('\\"', '"') ?? single ?? bare ?? '');
  }
  return found;
}

async function play(text: string): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'putback-transcript-'));
  folders.push(folder);
  const pinned = new Pinned(folder);
  const said: string[] = [];
  const file: { name: string; lines: string[] } = { name: '', lines: [] };
  const flush = () => {
    if (file.name) writeFileSync(join(folder, file.name), `${file.lines.join('\n')}\n`);
    file.name = '';
  };
  for (const line of text.split('\n')) {
    if (line.startsWith('file ')) {
      flush();
      file.name = line.slice(5);
      file.lines = [];
      said.push(line);
    } else if (line.startsWith('| ') || line === '|') {
      file.lines.push(line.slice(2));
      said.push(line);
    } else if (line.startsWith('#')) {
      said.push('', line);
    } else if (line.startsWith('$ ')) {
      flush();
      said.push('', line, ...(await command(pinned, folder, words(line.slice(2)))));
    }
  }
  return `${said.join('\n').trim()}\n`;
}

async function command(pinned: Pinned, folder: string, argv: string[]): Promise<string[]> {
  const [name, ...rest] = argv;
  if (name === 'tail') {
    const lines = readFileSync(join(folder, rest[1] ?? ''), 'utf8')
      .trimEnd()
      .split('\n');
    return lines.slice(-Number(rest[0]?.slice(1)));
  }
  if (name === 'cat')
    return readFileSync(join(folder, rest[0] ?? ''), 'utf8')
      .trimEnd()
      .split('\n');
  if (name !== 'putback') throw new Error(`no command ${name}`);
  const { exit, out, err } = await pinned.run(...rest);
  const printed = `${out}${err}`.replaceAll(folder, 'FOLDER').trimEnd();
  return [...(printed === '' ? [] : printed.split('\n')), ...(exit === 0 ? [] : [`[${exit}]`])];
}

describe('transcripts', () => {
  it.each(readdirSync(here).filter((f) => f.endsWith('.txt')))('%s', async (name) => {
    const path = join(here, name);
    const text = readFileSync(path, 'utf8');
    const played = await play(text);
    if (process.env.UPDATE) writeFileSync(path, played);
    expect(played, basename(path)).toBe(text);
  });
});
