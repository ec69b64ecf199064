/** What this program runs on, and what of it is odd, with the way out. Changes nothing. */
import { accessSync, constants, existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { cacheFolder } from '../../compiled.ts';
import { findBench, oddIn } from '../../diary/bench.ts';
import { gitPlaceOf } from '../../diary/git/place.ts';
import { firstLine, git } from '../../diary/git/run.ts';
import { reason } from '../../diary/git/why-not.ts';
import { findUser, oddInUser } from '../../diary/user.ts';
import { ownPresses } from '../../screens/show/own-keys.ts';
import { asciiOnly, colourAllowed } from '../../screens/terminal/guard.ts';
import { VERSION } from '../../version.ts';
import { answer, type Call } from '../base/command.ts';

/** A thing that was looked at: what it is here, and where it is odd, the way out. */
interface Finding {
  what: string;
  is: string;
  odd: string | null;
}

export async function run({ world }: Call) {
  const found = [program(), ...terminal(world), ...(await gitHere(world)), ...folders(world)];
  const odd = found.filter((f) => f.odd !== null);
  const width = Math.max(...found.map((f) => f.what.length));
  const lines = found.flatMap(({ what, is, odd }) => [
    `${what.padEnd(width)}  ${is}`,
    ...(odd === null ? [] : [`${' '.repeat(width)}  odd: ${odd}`]),
  ]);
  const last = odd.length === 0 ? 'Nothing is odd.' : `${odd.length} odd.`;
  return answer({ found, odd: odd.length }, [...lines, '', last].join('\n'));
}

const NO_HOME = 'HOME is not set: your settings are not looked for anywhere.';

type World = Call['world'];
const fine = (what: string, is: string): Finding => ({ what, is, odd: null });

function program(): Finding {
  const { version, arch, platform } = process;
  return fine('putback', `${VERSION}, on Node ${version} (${platform} ${arch})`);
}

function terminal({ env, stdin, stdout, platform }: World): Finding[] {
  const isTerminal = stdin.isTTY && stdout.isTTY;
  const { columns = 0, rows = 0 } = stdout;
  const size = `${columns}x${rows}`;
  const small = isTerminal && (columns < 80 || rows < 24);
  const ascii = asciiOnly(env, platform);
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || 'none';
  const colour = colourAllowed(env) ? 'colour' : 'no colour';
  return [
    isTerminal
      ? {
          what: 'terminal',
          is: `${env.TERM ?? 'of no name'}, ${size}, ${colour}`,
          odd: small
            ? '80x24 shows every screen whole: make it larger, or the letters smaller.'
            : null,
        }
      : fine('terminal', 'input or output is none: commands work, the screens need one'),
    {
      what: 'locale',
      is: ascii ? `${locale}: 7-bit characters only` : locale,
      odd:
        ascii && env.TERM !== 'linux'
          ? 'the locale is not UTF-8: LANG=C.UTF-8 shows degrees and dots as they are.'
          : null,
    },
  ];
}

async function gitHere({ folder, env }: World): Promise<Finding[]> {
  const version = await git(folder, 'version', [], { env });
  if (version.trouble === 'late') {
    const odd =
      'git does not answer: nothing keeps the history of jobs. Try it by itself: git version.';
    return [{ what: 'git', is: 'no answer', odd }];
  }
  if (version.code !== 0) {
    const odd = 'no git: jobs work without it, but nothing keeps their history. Install git.';
    return [{ what: 'git', is: 'not found', odd }];
  }
  const found = gitOf(firstLine(version.out));
  const place = await gitPlaceOf(folder, { env });
  if ('no' in place) {
    const odd = place.no === 'no-repo' ? null : reason(place.no, place.err);
    return [found, { what: 'repository', is: 'none in this folder', odd }];
  }
  const name = await git(folder, 'who', ['GIT_COMMITTER_IDENT'], { env });
  const odd = name.code === 0 ? null : `no commits yet: ${reason('no-name', '')}`;
  const state = place.underWay ?? (place.detached ? 'detached HEAD' : 'on a branch');
  return [found, { what: 'repository', is: state, odd }];
}

/** What putback asks of git is all known to it from this version on. */
const OLDEST_GIT = [2, 18] as const;

function gitOf(said: string): Finding {
  const [, major = '', minor = ''] = /^git version (\d+)\.(\d+)/.exec(said) ?? [];
  const is = said.replace('git version ', '');
  if (major === '')
    return { what: 'git', is, odd: 'this is no answer of git: look what is called so.' };
  const [oldMajor, oldMinor] = OLDEST_GIT;
  const old = Number(major) < oldMajor || (Number(major) === oldMajor && Number(minor) < oldMinor);
  const odd = `older than ${OLDEST_GIT.join('.')}: it may not keep the history of jobs. Install a newer one.`;
  return { what: 'git', is, odd: old ? odd : null };
}

function folders({ folder, env }: World): Finding[] {
  const user = findUser(env, ({ keys }, report) => void ownPresses(keys, report));
  const cache = cacheFolder(env);
  const bench = findBench(folder);
  return [
    {
      what: 'this folder',
      is: folder,
      odd: mayWrite(folder) ? null : 'it may not be written: no mark can be saved here.',
    },
    {
      what: 'bench',
      is: bench === null ? 'none: putback bench makes a folder one' : bench.folder,
      odd: bench && oddIn(bench, folder),
    },
    {
      what: 'settings',
      is: user.file ?? 'none',
      odd: user.file === null ? NO_HOME : oddInUser(user),
    },
    {
      what: 'cache',
      is: cache ?? 'none',
      odd:
        cache === null || mayWrite(nearest(cache))
          ? null
          : 'it may not be written: each start is slower, nothing else.',
    },
  ];
}

/** The folder itself, or the nearest one above it that is there. */
function nearest(folder: string): string {
  return existsSync(folder) || dirname(folder) === folder ? folder : nearest(dirname(folder));
}

function mayWrite(folder: string): boolean {
  try {
    accessSync(folder, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}
