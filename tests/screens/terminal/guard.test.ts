import { describe, expect, it } from 'vitest';
import {
  asciiOnly,
  cannotOpen,
  colourAllowed,
  drawnSize,
} from '../../../src/screens/terminal/guard.ts';

const terminal = { stdinIsTerminal: true, stdoutIsTerminal: true };
const file = { file: 'jobs/cover.yaml' };

describe('what is said where the screens cannot be opened', () => {
  it('nothing on a terminal, CI or not', () => {
    expect(cannotOpen({ ...terminal, env: { TERM: 'xterm-256color', CI: '1' } }, file)).toBeNull();
  });

  it('piped in or out: which one, and the plain commands', () => {
    expect(cannotOpen({ ...terminal, stdinIsTerminal: false, env: {} }, file)).toBe(
      'putback: the screens need a terminal, and the input is none. ' +
        'With --lines they are read out as plain lines. ' +
        'Plain commands do the same: putback status jobs/cover.yaml, putback --help.',
    );
    expect(cannotOpen({ ...terminal, stdoutIsTerminal: false, env: {} }, { folder: '.' })).toBe(
      'putback: the screens need a terminal, and the output is none. ' +
        'With --lines they are read out as plain lines. ' +
        'Plain commands do the same: putback status FILE, putback --help.',
    );
  });

  it('Git Bash without a pseudo-terminal: its two ways to one', () => {
    const said = cannotOpen(
      { stdinIsTerminal: false, stdoutIsTerminal: false, env: { MSYSTEM: 'MINGW64' } },
      file,
    );
    expect(said).toContain('MINGW64');
    expect(said).toContain('winpty');
    expect(said).toContain('MSYS=enable_pcon');
  });

  it('a dumb terminal', () => {
    expect(cannotOpen({ ...terminal, env: { TERM: 'dumb' } }, file)).toContain('TERM is dumb');
  });

  it('names a file so that it can be typed, and nothing in it is obeyed', () => {
    const say = (name: string) =>
      cannotOpen({ ...terminal, stdinIsTerminal: false, env: {} }, { file: name });
    expect(say('left cover.yaml')).toContain("putback status 'left cover.yaml',");
    expect(say("don't.yaml")).toContain("putback status 'don'\\''t.yaml',");
    expect(say('a\x1b]0;x\x07\n.yaml')).toContain("'a\\x1b]0;x\\x07 .yaml'");
    expect(say('a\x1b]0;x\x07\n.yaml')).not.toMatch(/[\x00-\x1f]/);
  });
});

describe('ASCII only', () => {
  it.each([
    ['a UTF-8 locale', { LANG: 'de_DE.UTF-8' }, false],
    ['spelled utf8', { LANG: 'C.utf8' }, false],
    ['LC_ALL goes before LANG', { LC_ALL: 'C', LANG: 'en_GB.UTF-8' }, true],
    ['LC_CTYPE goes before LANG', { LC_CTYPE: 'en_GB.UTF-8', LANG: 'C' }, false],
    ['an empty LC_ALL says nothing', { LC_ALL: '', LANG: 'en_GB.UTF-8' }, false],
    ['no locale', {}, true],
    ['Latin 1', { LANG: 'de_DE.ISO-8859-1' }, true],
    ['the Linux console', { LANG: 'en_GB.UTF-8', TERM: 'linux' }, true],
  ])('%s: %o gives %s', (_, env, ascii) => {
    expect(asciiOnly(env, 'linux')).toBe(ascii);
  });

  it('Windows has no locale and shows everything', () => {
    expect(asciiOnly({}, 'win32')).toBe(false);
    expect(asciiOnly({ LANG: 'C' }, 'win32')).toBe(true);
  });
});

describe('colour', () => {
  it.each([
    ['by itself', { TERM: 'xterm-256color' }, true],
    ['NO_COLOR', { NO_COLOR: '1' }, false],
    ['NO_COLOR goes before FORCE_COLOR', { NO_COLOR: '1', FORCE_COLOR: '3' }, false],
    ['an empty NO_COLOR says nothing', { NO_COLOR: '' }, true],
    ['FORCE_COLOR=0', { FORCE_COLOR: '0' }, false],
    ['a terminal without it', { TERM: 'vt220' }, false],
    ['unless forced', { TERM: 'vt220', FORCE_COLOR: '1' }, true],
    ['one that says so', { TERM: 'xterm-mono' }, false],
  ])('%s: %o gives %s', (_, env, colour) => {
    expect(colourAllowed(env)).toBe(colour);
  });
});

describe('the size that is drawn for', () => {
  it('0 × 0 says that nobody knows: 80 × 24', () => {
    expect(drawnSize({ columns: 0, rows: 0 }, 'linux')).toEqual({ columns: 80, rows: 24 });
    expect(drawnSize({}, 'linux')).toEqual({ columns: 80, rows: 24 });
  });

  it('one row less on Windows, which scrolls when its last one is filled', () => {
    expect(drawnSize({ columns: 120, rows: 40 }, 'win32')).toEqual({ columns: 120, rows: 39 });
    expect(drawnSize({ columns: 5, rows: 1 }, 'win32')).toEqual({ columns: 5, rows: 1 });
  });
});
