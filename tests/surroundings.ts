import { chmodSync, mkdirSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pinnedEnv } from './terminal/world.ts';

/** What somebody's shell, git, npm and terminal say: of no concern to a test, which says itself what it tries. */
const THEIRS =
  /^(?:GIT|XDG|LC|npm_config)_|^(?:LANGUAGE|COLORTERM|COLUMNS|LINES|NO_COLOR|FORCE_COLOR|CI|EDITOR|VISUAL|PAGER|ENV|BASH_ENV|POSIXLY_CORRECT|INK_SCREEN_READER)$/i;

/** Signs. Below a longer path no socket finds room for its name, neither a test's nor a browser's. */
const LONGEST = 40;

/** As root some tests go on as another user, who has to come there. */
function serves(folder: string): boolean {
  return folder.length <= LONGEST && (process.getuid?.() !== 0 || isOpen(folder));
}

/** Whether anybody may enter this folder, and all above it. */
function isOpen(path: string): boolean {
  const mode = statSync(path, { throwIfNoEntry: false })?.mode ?? 0;
  return (mode & 0o001) !== 0 && (dirname(path) === path || isOpen(dirname(path)));
}

/**
 * What all tests stand on: the Node that package.json pins (a runner started past npm gets the system's), one
 * folder for all that is temporary, which goes when the run ends, whatever became of its tests, and nothing of whoever
 * runs them: no home, zone, language or settings of theirs.
 *
 * @returns what ends it.
 */
export default function setup(): () => void {
  const major = Number(process.versions.node.split('.')[0]);
  if (major < 24) throw new Error(`Node ${process.versions.node} runs these tests. Run: npm test`);
  const base = [tmpdir(), '/tmp', '/var/tmp'].find(serves) ?? tmpdir();
  const folder = mkdtempSync(join(base, 'putback-tests-'));
  chmodSync(folder, 0o755);
  for (const name of Object.keys(process.env)) if (THEIRS.test(name)) delete process.env[name];
  const home = join(folder, 'home');
  mkdirSync(home);
  const own = { TMPDIR: folder, XDG_STATE_HOME: join(folder, 'state') };
  Object.assign(process.env, pinnedEnv(home), own);
  process.umask(0o022);
  return () => rmSync(folder, { recursive: true, force: true });
}
