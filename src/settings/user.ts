/** Where a user's own settings lie, by the XDG base directory specification. */
type Env = Readonly<Record<string, string | undefined>>;

export const SETTINGS_FILE = 'settings.yaml';

/** Absolute path of the file, whether or not it is there; null where the user has no such place. */
export function settingsFile(env: Env): string | null {
  const { XDG_CONFIG_HOME = '', HOME = '', APPDATA = '' } = env;
  // A relative path in the variable counts as not set.
  const base = XDG_CONFIG_HOME.startsWith('/')
    ? XDG_CONFIG_HOME
    : HOME
      ? `${HOME}/.config`
      : APPDATA;
  return base ? `${base}/putback/${SETTINGS_FILE}` : null;
}
