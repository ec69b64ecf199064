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

/** ms. One that has nothing to open it with says so at once; one that goes on has it. */
const PATIENCE = 1500;

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
    let timer: NodeJS.Timeout | undefined;
    const say = (text: string | null) => {
      clearTimeout(timer);
      done(text);
    };
    child.once('error', () => say(`${program} is not here: open it yourself.`));
    // Explorer ends with 1 whatever became of it.
    const failed = (code: number | null) => code !== 0 && desktop.platform !== 'win32';
    child.once('exit', (code) =>
      say(failed(code) ? `${program} could not: open it yourself.` : null),
    );
    child.once('spawn', () => {
      child.unref();
      timer = setTimeout(() => say(null), PATIENCE);
    });
  });
}
