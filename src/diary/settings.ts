/** The user's own settings, for all benches: `settings.yaml` in the folder for settings. Never a command. */
import { isAbsolute, join, resolve } from 'node:path';
import { parse } from 'yaml';
import { errorCode } from '../job/save/disk.ts';
import { failOf } from '../job/save/fail.ts';
import { readNamed } from '../job/save/plain.ts';

export interface Settings {
  /** Folders of other benches that are searched too, absolute. */
  benches: string[];
  /** Why they could not be read, a sentence; null: they were, or there are none. */
  unread: string | null;
}

type Env = Readonly<Record<string, string | undefined>>;

const homeOf = ({ HOME = '', USERPROFILE = '' }: Env): string => HOME || USERPROFILE;

/** `$XDG_CONFIG_HOME/putback/settings.yaml`, else the one in `~/.config`; null where there is no home. */
export function settingsFile(env: Env): string | null {
  const { XDG_CONFIG_HOME = '' } = env;
  const home = homeOf(env);
  if (isAbsolute(XDG_CONFIG_HOME)) return join(XDG_CONFIG_HOME, 'putback', 'settings.yaml');
  return isAbsolute(home) ? join(home, '.config', 'putback', 'settings.yaml') : null;
}

/** `benches: [~/repairs, /srv/club]`; a path that is not absolute begins at the settings' own folder. */
export function ownSettings(env: Env): Settings {
  const file = settingsFile(env);
  if (file === null) return { benches: [], unread: null };
  let text: string;
  try {
    text = readNamed(file).bytes.toString('utf8');
  } catch (error) {
    const code = errorCode(error);
    if (code === null) throw error;
    const missing = code === 'ENOENT' || code === 'ENOTDIR';
    return { benches: [], unread: missing ? null : failOf(error, file, 'read').say };
  }
  const odd = { benches: [], unread: `${file} has no benches: [FOLDER, …] that can be read.` };
  let raw: unknown;
  try {
    raw = parse(text, { schema: 'failsafe', maxAliasCount: 0 });
  } catch {
    return odd;
  }
  if (raw === null || raw === '') return { benches: [], unread: null };
  if (typeof raw !== 'object') return odd;
  const { benches = [] } = raw as { benches?: unknown };
  const all = typeof benches === 'string' ? [benches] : benches;
  if (!Array.isArray(all) || !all.every((b) => typeof b === 'string' && b !== '')) return odd;
  const home = homeOf(env);
  const at = (path: string) => resolve(file, '..', path.replace(/^~(?=\/|$)/, home));
  return { benches: all.map(at), unread: null };
}
