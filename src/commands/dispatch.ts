/** argv to one command, and its answer to the terminal or the pipe. */
import { ID, TIME } from '../job/diary/entry.ts';
import { noSuchDay } from '../model/no-such-day.ts';
import { harmlessJson, quoted, safe } from '../model/safe.ts';
import { daysBetween, readInstant, secondsOf } from '../model/time.ts';
import { many } from '../model/words.ts';
import { VERSION } from '../version.ts';
import type { World } from '../world.ts';
import { type Answer, type Call, type Command, misuse } from './base/command.ts';
import { withUnread } from './base/unread.ts';
import { parseWords } from './shell/words.ts';
import { allCommands, commandNamed } from './table.ts';

const NO_FOLDER =
  'The folder in which putback was started is not there any more. Go to another with cd, and start it there.';

/** How an answer is given: as one JSON object, or as text for people. */
type Form = 'json' | 'text';

/** Runs the command line and gives the exit code. */
export async function dispatch(argv: readonly string[], world: World): Promise<number> {
  // Behind -- all words are texts.
  const end = argv.indexOf('--');
  const isJson = argv.slice(0, end < 0 ? argv.length : end).includes('--json');
  const form = isJson ? 'json' : 'text';
  try {
    return await answered(argv, form, world);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).syscall === 'uv_cwd')
      return await print(misuse('no-folder', NO_FOLDER), form, world);
    world.forget?.();
    const { ownFault } = await import('../own-fault.ts');
    const say = ownFault(
      error,
      'What was marked before is in the file, and putback diary shows it.',
    );
    const fault = { ok: false, refused: { code: 'own-fault', say } };
    return await print({ exit: 1, json: fault, text: '', error: say }, form, world);
  }
}

async function answered(argv: readonly string[], form: Form, world: World): Promise<number> {
  const [name = '', ...rest] = argv;
  if (name === '--version' || name === '-V')
    return await print(
      { exit: 0, json: { ok: true, version: VERSION }, text: VERSION },
      form,
      world,
    );
  if (name === '--help' || name === '-h') {
    const { help } = await import('./shell/help.ts');
    const text = help(allCommands());
    return await print({ exit: 0, json: { ok: true, help: text }, text }, form, world);
  }
  const command = commandNamed(name);
  if (!command) return await otherwise(name, rest, world, form);
  const parsed = parseWords(command, name, rest);
  if ('answer' in parsed)
    return await print(await orPathSlip(parsed.answer, name, command, rest, world), form, world);
  if (parsed.options.help) {
    const { commandHelp } = await import('./shell/help.ts');
    const text = commandHelp(command);
    return await print({ exit: 0, json: { ok: true, help: text }, text }, form, world);
  }
  const { run } = await command.load();
  const own = pinned(world, parsed);
  if ('exit' in own) return await print(own, form, world);
  const made = withUnread(
    await run({
      ...parsed,
      get commands() {
        return allCommands();
      },
      world: own,
    }),
    own,
  );
  const meant = await orPathSlip(made, name, command, rest, world);
  const answer = aheadSaid(meant, own, world);
  const exit = await print(answer, form, world);
  if (answer.open === undefined) return exit;
  const { openScreens } = await import('../screens/terminal/open.ts');
  const { lines, ascii } = parsed.options;
  const how = { lines: lines === true, ...(ascii ? { ascii: true } : {}) };
  return await openScreens({ folder: answer.open }, own, { guide: true, ...how });
}

/** A refusal that comes of a path which the shell cut at its blanks, or of a second path, says so. */
async function orPathSlip(
  answer: Answer,
  name: string,
  command: Command,
  rest: readonly string[],
  world: World,
): Promise<Answer> {
  const { code } = (answer.json.refused ?? {}) as { code?: string };
  if (code !== 'usage' && code !== 'no-such-file') return answer;
  const { pathSlip } = await import('./slips.ts');
  return pathSlip(name, command, rest, world) ?? answer;
}

/** No command: nothing or a path opens the screens, anything else is a slip. */
async function otherwise(
  first: string,
  others: string[],
  world: World,
  form: Form,
): Promise<number> {
  const { pathKind } = await import('./base/open-path.ts');
  const words = [first, ...others].filter((word) => word !== '' && word !== '--json');
  const how = {
    lines: words.includes('--lines'),
    ...(words.includes('--ascii') ? { ascii: true } : {}),
  };
  const [name = '', ...rest] = words.filter((word) => word !== '--lines' && word !== '--ascii');
  const kind = name === '' ? 'folder' : pathKind(name, world);
  if (kind === null && first !== name && commandNamed(name)) {
    const say = `${first} is for the screens; ${name} comes first: putback help ${name}`;
    return await print(misuse('command-first', say), form, world);
  }
  if (kind === null || rest.length > 0 || name.startsWith('-')) {
    const { slipIn } = await import('./slips.ts');
    return await print(slipIn([name, ...rest], allCommands(), world), form, world);
  }
  if (form === 'json') {
    const say = 'Screens have no JSON: name a command. putback --help says what there is.';
    return await print(misuse('screens', say), form, world);
  }
  const { openScreens } = await import('../screens/terminal/open.ts');
  const path = name === '' ? world.folder : name;
  const { resolve } = await import('node:path');
  const full = resolve(world.folder, path);
  return await openScreens(kind === 'folder' ? { folder: full } : { file: full }, world, how);
}

/** Offsets are those that clocks on earth have. */
function isOurTime(at: string): boolean {
  const year = Number(at.slice(0, 4));
  const offset = readInstant(at)?.offset ?? 0;
  return year >= 1970 && year < 2200 && Math.abs(offset) <= 14 * 60;
}

/** A mark that says a later day than the clock has, or one of another year, is most likely a slip: noted, and told. */
function aheadSaid(answer: Answer, own: World, world: World): Answer {
  if (answer.json.changed !== true) return answer;
  const [at, clock] = [own.now(), world.now()];
  const days = Math.max(daysBetween(clock, at), daysBetween(at, clock));
  const seconds = secondsOf(at) - secondsOf(clock);
  const ahead = seconds > DAY;
  if (!ahead && seconds >= -YEAR * DAY) return answer;
  const off = `${many(days, 'day')} ${ahead ? 'ahead of' : 'behind'}`;
  const say = `--at is ${off} the clock, which says ${clock.slice(0, 10)}.`;
  const error = [...(answer.error ? [answer.error] : []), say].join('\n');
  return {
    ...answer,
    json: { ...answer.json, [ahead ? 'ahead' : 'behind']: days },
    error,
  };
}

/** Days. What was done so long ago is noted as it is, but read back. */
const YEAR = 365;

/** s */
const DAY = 86_400;

/** `--at` is now and `--id` the next id, for every command; each command line has a world of its own. */
function pinned(world: World, { options }: Pick<Call, 'options'>): World | Answer {
  const { at, id } = options;
  if (typeof at === 'string' && !TIME.test(at)) {
    return misuse(
      'bad-time',
      `--at ${quoted(at)} is no time with its offset, like 2026-04-11T18:25:40+02:00.`,
    );
  }
  if (typeof at === 'string' && readInstant(at) === null) {
    const why = noSuchDay(at.slice(0, 10))?.say ?? 'There is no such time.';
    return misuse('bad-time', `--at ${quoted(at)}: ${why}`);
  }
  if (typeof at === 'string' && !isOurTime(at)) {
    const taken = 'years from 1970 to 2199 and offsets up to 14:00 are taken';
    return misuse('bad-time', `--at ${quoted(at)} is no time that a clock shows now: ${taken}.`);
  }
  if (typeof id === 'string' && !ID.test(id)) {
    return misuse('bad-id', `--id ${quoted(id)} is no id: 8 letters, digits, - or _.`);
  }
  // Not copied: what of the world costs time to be made (its streams, its zone) is asked for where it is used.
  const own: World = Object.create(world);
  if (at === undefined && id === undefined) return own;
  let given = typeof id === 'string' ? id : null;
  return Object.assign(own, {
    now: () => (typeof at === 'string' ? at : world.now()),
    id: () => {
      const next = given ?? world.id();
      given = null;
      return next;
    },
  });
}

/**
 * Whatever a file holds, nothing that leaves here can steer a terminal. An answer that could not be written is told
 * as that; what was marked is marked, and its exit code says so, while an answer that was all there was is not kept.
 */
async function print(answer: Answer, form: Form, world: World): Promise<number> {
  const text =
    form === 'json' ? `${harmlessJson(answer.json)}\n` : (answer.exact ?? ended(safe(answer.text)));
  if (form === 'text' && answer.error) await write(world, 2, `${safe(answer.error)}\n`);
  const failed = text === '' ? null : await write(world, 1, text);
  // A reader that has seen enough (`| head -1`) is no fault.
  if (failed === null || failed === 'EPIPE') return answer.exit;
  const done = answer.json.changed === true;
  const what = done ? 'What was asked is done, but the answer' : 'The answer';
  await write(world, 2, `${what} could not be written: ${sayOutput(failed)}.\n`);
  return done ? answer.exit : 3;
}

const ended = (text: string): string => (text === '' ? '' : `${text}\n`);

function sayOutput(code: string): string {
  const says: Record<string, string> = {
    ENOSPC: 'the disk is full',
    EDQUOT: 'the disk is full',
    EFBIG: 'the file would be larger than is allowed here',
    EROFS: 'the disk cannot be written',
  };
  return says[code] ?? code;
}

/** Null when it is written, else what the system said. */
async function write(world: World, output: 1 | 2, text: string): Promise<string | null> {
  const said = (error: unknown) => (error as NodeJS.ErrnoException).code ?? 'EIO';
  let left: string | Uint8Array = text;
  try {
    left = world.writeAtOnce?.(output, text) ?? text;
  } catch (error) {
    return said(error);
  }
  if (left.length === 0) return null;
  const stream = output === 1 ? world.stdout : world.stderr;
  return await new Promise((done) => {
    stream.write(left, (error) => done(error ? said(error) : null));
  });
}
