import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * What all tests stand on: the Node that package.json pins (a runner started past npm gets the system's), and one
 * folder for all that is temporary, which goes when the run ends, whatever became of its tests.
 *
 * @returns what ends it.
 */
export default function setup(): () => void {
  const major = Number(process.versions.node.split('.')[0]);
  if (major < 24) throw new Error(`Node ${process.versions.node} runs these tests. Run: npm test`);
  const folder = mkdtempSync(join(tmpdir(), 'putback-tests-'));
  // Some tests open a folder as another user.
  chmodSync(folder, 0o755);
  process.env.TMPDIR = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
