/** Which commit brought which entry of a diary. */
import { basename, dirname } from 'node:path';
import { git } from './run.ts';

const ENTRY_ID = /\bid: "?([A-Za-z0-9_-]{8})\b/;

/** Short commit ids by entry id; empty where there is no git, no repository, no commit. */
export async function commitsOf(file: string): Promise<Map<string, string>> {
  const found = new Map<string, string>();
  const done = await git(dirname(file), 'blame', [basename(file)]);
  if (done.code !== 0) return found;
  let commit = '';
  for (const line of done.out.split('\n')) {
    const head = /^([0-9a-f]{40,64}) \d+ \d+/.exec(line);
    if (head?.[1]) commit = head[1];
    if (!line.startsWith('\t')) continue;
    const id = ENTRY_ID.exec(line)?.[1];
    if (id) found.set(id, commit.slice(0, 8));
  }
  return found;
}
