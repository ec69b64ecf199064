/** A real folder for one test file, and a job file in it. */
import { mkdtempSync, readdirSync, readFileSync, realpathSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export function newFolder(): string {
  return realpathSync(mkdtempSync(join(tmpdir(), 'putback-save-')));
}

export const JOB =
  'putback: 1\njob: Left cover weeps oil\n\npieces:\n  cover: {bolts: S S S}\n\ndiary:\n';

export function newJob(text: string | Uint8Array = JOB): string {
  const file = join(newFolder(), 'cover.yaml');
  writeFileSync(file, text);
  return file;
}

export const textOf = (file: string): string => readFileSync(file, 'utf8');

/** What lies in the folder beside the job file, but for the file that hides it from git. */
export function strays(file: string): string[] {
  const side = join(file, '..', '.putback');
  try {
    return readdirSync(side).filter((name) => name !== '.gitignore');
  } catch {
    return [];
  }
}

export const line = (id: string): string =>
  `- {at: 2026-05-02T10:11:05+02:00, id: ${id}, piece: cover, hole: 4, in: M+clip}`;
