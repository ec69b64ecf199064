/**
 * Hands a file to what the desktop opens such files with. The program that is started stands here, never in a file; the
 * path is one word of its own and begins with a slash or a drive, so that it is no option.
 */
import { spawn } from 'node:child_process';
import { isAbsolute } from 'node:path';

export interface Desktop {
  platform: NodeJS.Platform;
  env: Readonly<Record<string, string | undefined>>;
}

export function openerOf({ platform, env }: Desktop): string {
  if (platform === 'darwin') return '/usr/bin/open';
  // By its whole path: Windows would look into the working folder first.
  if (platform === 'win32') return `${env.SystemRoot ?? 'C:\\Windows'}\\explorer.exe`;
  return 'xdg-open';
}

/** Null when it was handed over, else why not, a sentence. */
export function openFile(file: string, desktop: Desktop): Promise<string | null> {
  const program = openerOf(desktop);
  if (!isAbsolute(file)) return Promise.resolve(`${file} is no whole path.`);
  return new Promise((done) => {
    const child = spawn(program, [file], {
      stdio: 'ignore',
      detached: true,
      env: { ...desktop.env },
    });
    child.once('error', () => done(`${program} is not here: open it yourself.`));
    child.once('spawn', () => {
      child.unref();
      done(null);
    });
  });
}
