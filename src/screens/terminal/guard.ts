/** Whether the screens can be opened here, and how they have to look: all from what is asked of `World`. */
import { quoted } from '../../model/safe.ts';

type Env = Readonly<Record<string, string | undefined>>;

interface Here {
  stdinIsTerminal: boolean;
  stdoutIsTerminal: boolean;
  env: Env;
}

/** One plain line that says why the screens cannot be opened and what to do instead; null: they can. */
export function cannotOpen(
  here: Here,
  target: { file: string } | { folder: string },
): string | null {
  const why = reason(here);
  return why === null ? null : `putback: ${why} ${wayOn(target)}`;
}

function reason({ stdinIsTerminal, stdoutIsTerminal, env }: Here): string | null {
  if (!stdinIsTerminal || !stdoutIsTerminal) {
    // Git Bash's own window is a pipe to a Windows program, unless one of these two makes it a terminal.
    if (env.MSYSTEM) {
      return (
        `the screens need a terminal, and ${env.MSYSTEM} gives a pipe. ` +
        'Put winpty before the command, or set MSYS=enable_pcon.'
      );
    }
    const which = stdinIsTerminal ? 'output' : 'input';
    return `the screens need a terminal, and the ${which} is none.`;
  }
  if (env.TERM === 'dumb')
    return 'the screens need a terminal that moves its cursor, and TERM is dumb.';
  return null;
}

function wayOn(target: { file: string } | { folder: string }): string {
  const first = 'file' in target ? `putback status ${quoted(target.file)}` : 'putback status FILE';
  return `With --lines they are read out as plain lines. Plain commands do the same: ${first}, putback --help.`;
}

/**
 * Whether only 7-bit characters may be shown: the locale is not UTF-8, or it is the Linux console, whose
 * font holds few others. Windows has no locale in its environment and shows UTF-8.
 */
export function asciiOnly(env: Env, platform: string): boolean {
  if (env.TERM === 'linux') return true;
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || '';
  if (locale === '' && platform === 'win32') return false;
  return !/utf-?8/i.test(locale);
}

/**
 * Whether colour and weight may be shown. NO_COLOR (any value but an empty one, https://no-color.org) goes
 * before FORCE_COLOR, and that before the kind of terminal.
 */
export function colourAllowed(env: Env): boolean {
  if (env.NO_COLOR) return false;
  if (env.FORCE_COLOR !== undefined) return !['0', 'false'].includes(env.FORCE_COLOR);
  return !/^vt\d|-m(ono)?$/.test(env.TERM ?? '');
}

/** Whether a screen reader is said to be in use, by the variable that Ink heeds too. */
export function readOutAsked(env: Env): boolean {
  return !['', '0', 'false', undefined].includes(env.INK_SCREEN_READER);
}

/** Columns and rows to draw for. 0 × 0 says that the terminal does not know; Windows scrolls when its last row is filled. */
export function drawnSize(
  size: { columns?: number | undefined; rows?: number | undefined },
  platform: string,
): { columns: number; rows: number } {
  const columns = size.columns || 80;
  const rows = size.rows || 24;
  return { columns, rows: platform === 'win32' ? Math.max(1, rows - 1) : rows };
}
