/** A user's own settings, from the place where such files belong. */
import { lstatSync, realpathSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, resolve } from 'node:path';
import { errorCode } from '../job/save/disk.ts';
import { failOf } from '../job/save/fail.ts';
import { readPlain } from '../job/save/plain.ts';
import { ended, quoted } from '../model/safe.ts';
import type { Fault } from '../model/types.ts';
import { readUserSettings, type UserSettings } from '../settings/settings.ts';
import { SETTINGS_FILE, settingsFile } from '../settings/user.ts';

export interface User {
  settings: UserSettings;
  faults: Fault[];
  /** Absolute path, whether or not the file is there; null: the user has no such place. */
  file: string | null;
  /** Why the file could not be read, a sentence; null: it was, or there is none. */
  unread: string | null;
}

/** Settings are a few lines. */
const MOST_BYTES = 1 << 20;

/** Total: what cannot be read is as if it were not said. `also`: see `readUserSettings`. */
export function findUser(
  env: Readonly<Record<string, string | undefined>>,
  also?: Parameters<typeof readUserSettings>[2],
): User {
  const file = settingsFile(env);
  const read = (text: string, unread: string | null): User => ({
    ...readUserSettings(text, SETTINGS_FILE, also),
    file,
    unread,
  });
  if (file === null) return read('', null);
  try {
    // The folder is the user's own, and many keep what lies there elsewhere, behind links.
    const { bytes, whole } = readPlain(realpathSync(file), MOST_BYTES);
    return whole
      ? read(bytes.toString('utf8'), null)
      : read('', `${SETTINGS_FILE} is too large to be read.`);
  } catch (error) {
    const code = errorCode(error);
    if ((code === 'ENOENT' || code === 'ENOTDIR') && isLink(file))
      return read('', `${SETTINGS_FILE} is a link, and no file is there where it leads (${file}).`);
    if (code === 'ENOENT' || code === 'ENOTDIR') return read('', null);
    if (code === null) throw error;
    return read('', failOf(error, file, 'read').say);
  }
}

function isLink(file: string): boolean {
  try {
    return lstatSync(file).isSymbolicLink();
  } catch {
    return false;
  }
}

/** What is odd in them, one sentence; null: nothing. */
export function oddInUser({ unread, faults, file }: User): string | null {
  const [first] = faults;
  if (unread !== null || first === undefined) return unread;
  const check = `putback check ${quoted(file ?? SETTINGS_FILE)}`;
  const more = faults.length > 1 ? ` ${check} tells all ${faults.length}.` : '';
  return `Your settings, line ${first.line}: ${first.say}. ${ended(first.fix)}${more} (${file})`;
}

/** Folders of the benches that a user has named: `~/repairs` from the home, others from the folder of the settings. */
export function benchFolders(
  { settings, file }: User,
  env: Readonly<Record<string, string | undefined>>,
): string[] {
  const home = env.HOME || homedir();
  const at = file === null ? '.' : dirname(file);
  return settings.benches.map((path) => resolve(at, path.replace(/^~(?=[\\/]|$)/, home)));
}
