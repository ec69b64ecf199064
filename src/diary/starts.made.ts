/**
 * The lists to start tracing from that come with the program: its templates with suspects. In the built program they
 * stand here as data: to read ten files takes longer than all else before the first frame.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readJob } from '../job/read.ts';
import { type Start, startNamed } from '../plan/trace/starts.ts';
import { shipped } from './shipped.ts';

let read: Start[] | null = null;

/** By their names; none where the program came without its templates. Read once. */
export function startsShipped(): readonly Start[] {
  read ??= startsIn();
  return read;
}

function startsIn(): Start[] {
  try {
    const folder = shipped('templates');
    return readdirSync(folder)
      .sort()
      .flatMap((file) => {
        const { upper } = readJob(readFileSync(join(folder, file), 'utf8'), file);
        return startNamed(file.replace(/\.yaml$/, ''), upper) ?? [];
      });
  } catch {
    return [];
  }
}
