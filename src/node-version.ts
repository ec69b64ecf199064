/** The oldest Node that the bundle and its libraries run on. */
const NEEDED = [22, 12] as const;

/** One plain line when this Node is too old, else null. `own`: whether the program's folder has a Node of its own. */
export function nodeTooOld(version: string, own: () => boolean): string | null {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major > NEEDED[0] || (major === NEEDED[0] && minor >= NEEDED[1])) return null;
  return `putback needs Node ${NEEDED.join('.')} or newer, and this is ${version}. ${own() ? 'In its folder, npm start brings its own.' : 'Install a newer one (nodejs.org), then run it again.'}`;
}
