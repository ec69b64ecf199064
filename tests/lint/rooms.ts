/**
 * The rooms of the house and what each may import: one row a folder of src. `npm run rooms` writes the lint
 * rules in biome.jsonc from this table; what a row does not name is refused. Files of one room may import each
 * other; a folder inside another is a room of its own.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join, posix } from 'node:path';

export interface Room {
  /** Rooms it may import, as folders of src. `*`: any, for the three files that start the program. */
  may: readonly string[];
  /** Touches files, processes or the terminal. All others answer with values, from inputs alone. */
  system?: true;
  /** Draws with Ink. */
  draws?: true;
}

/** The words of the file and of the diary, then the shapes that come of them. */
const KEYS = ['model/keys', 'model/states'];
const WORDS = ['model', ...KEYS, 'model/verbs', 'model/types'];
const THREAD = [...WORDS, 'bolt/read', 'bolt/thread'];
const BOLT = [...THREAD, 'bolt/torque', 'bolt/fit', 'bolt/length'];
const PIECE = [...BOLT, 'piece', 'piece/sequence', 'piece/mixup'];
const FORM = [...PIECE, 'job/yaml', 'job/faults', 'job/diary', 'job/truth', 'job/form'];
const FOLD = [...FORM, 'job/fold'];
/** What every judge stands on. */
const JUDGE = [...FOLD, 'job/judge/base'];
const JUDGES = ['job/judge/marks', 'job/judge/person', 'job/judge/tasks'];
const JOB = [...JUDGE, ...JUDGES, 'job', 'job/judge', 'job/edit'];
/** Each of these rooms of the plan may import those before it. */
const ORDER = [...JOB, 'plan/time', 'plan/order'];
const CARE = [...ORDER, 'plan/care', 'plan/seal'];
const TESTS = [...CARE, 'plan/buy', 'plan/tests'];
const PIECES = [...TESTS, 'plan/known', 'plan/typed', 'plan/piece'];
const GATES = [...PIECES, 'plan/gates'];
const WHOLE = [...GATES, 'trace', 'trace/weigh', 'plan/trace', 'plan'];
const PLAN = [...WHOLE, 'plan/next', 'plan/task', 'plan/photos'];
/** What knows the folder that a job lies in. */
const DIARY = [...PLAN, 'settings', 'job/merge', 'job/save', 'diary', 'diary/git'];
/** What each command stands on. */
const COMMANDS = [...DIARY, 'commands/base', ''];
const COMMAND_FOLDERS = [
  ...['shell', 'marks', 'bolts', 'job', 'file', 'trace', 'memory', 'paper', 'bench'],
].map((folder) => `commands/${folder}`);
/** What the screens stand on: lines and pictures, state and moves. */
const SCREENS = [...PLAN, ...['find', 'memory', 'paper', 'screens/kit', 'screens/base']];

/** A folder a screen, or a few that belong together. */
const SCREEN_FOLDERS = [
  ...[
    'add',
    'ask',
    'bench',
    'draw',
    'due',
    'file',
    'find',
    'gate',
    'job',
    'known',
    'last',
    'note',
    'paper',
    'parts-list',
    'piece',
    'tasks',
    'trace',
  ],
].map((folder) => `screens/${folder}`);

export const ROOMS: Readonly<Record<string, Room>> = {
  '': { may: ['*'], system: true },
  'model/keys': { may: [] },
  'model/states': { may: [] },
  'model/verbs': { may: KEYS },
  'model/types': { may: [...KEYS, 'model/verbs'] },
  model: { may: WORDS },
  'bolt/read': { may: WORDS },
  'bolt/thread': { may: THREAD },
  'bolt/torque': { may: THREAD },
  'bolt/fit': { may: THREAD },
  'bolt/length': { may: BOLT },
  piece: { may: BOLT },
  'piece/sequence': { may: [...BOLT, 'piece'] },
  'piece/mixup': { may: [...BOLT, 'piece'] },
  'job/yaml': { may: [...WORDS, 'job/faults', 'job/diary'] },
  'job/faults': { may: WORDS },
  'job/diary': { may: [...WORDS, 'job/yaml'] },
  'job/truth': { may: PIECE },
  'job/form': { may: FORM },
  'job/fold': { may: FOLD },
  'job/judge/base': { may: FOLD },
  'job/judge/marks': { may: JUDGE },
  'job/judge/person': { may: [...JUDGE, 'job/judge/marks'] },
  'job/judge/tasks': { may: JUDGE },
  'job/judge': { may: [...JUDGE, ...JUDGES] },
  'job/edit': { may: JOB },
  'job/merge': { may: JOB },
  job: { may: JOB },
  'job/save': { may: JOB, system: true },
  'plan/time': { may: JOB },
  'plan/order': { may: ORDER },
  'plan/care': { may: ORDER },
  'plan/seal': { may: CARE },
  'plan/buy': { may: CARE },
  'plan/tests': { may: TESTS },
  'plan/known': { may: CARE },
  'plan/typed': { may: ORDER },
  'plan/piece': { may: PIECES },
  'plan/gates': { may: GATES },
  'plan/trace': { may: [...TESTS, 'trace', 'trace/weigh'] },
  plan: { may: WHOLE },
  'plan/next': { may: WHOLE },
  'plan/task': { may: [...WHOLE, 'plan/next'] },
  'plan/photos': { may: ORDER },
  settings: { may: FORM },
  trace: { may: [...BOLT, 'trace/search', 'trace/weigh'] },
  'trace/search': { may: [...BOLT, 'trace'] },
  'trace/weigh': { may: [...BOLT, 'trace'] },
  diary: { may: DIARY, system: true },
  'diary/git': { may: DIARY, system: true },
  memory: { may: PLAN },
  'memory/bench': { may: [...PLAN, 'job/save', 'find', 'find/index', 'memory'], system: true },
  find: { may: [...WORDS, 'job/yaml', 'job/diary'] },
  'find/index': { may: [...FORM, 'job/save', 'diary', 'find'], system: true },
  paper: { may: [...PLAN, 'memory'] },
  'paper/desk': { may: [...PLAN, 'job/save', 'diary', 'paper'], system: true },
  'commands/base': { may: [...DIARY, ''], system: true },
  'commands/shell': { may: [...COMMANDS, 'memory/bench', 'paper'], system: true },
  'commands/marks': { may: [...COMMANDS, 'commands/memory'], system: true },
  'commands/bolts': { may: COMMANDS, system: true },
  'commands/job': { may: [...COMMANDS, 'screens/show'], system: true },
  'commands/file': { may: [...COMMANDS, 'memory', 'memory/bench'], system: true },
  'commands/trace': { may: [...COMMANDS, 'memory', 'memory/bench'], system: true },
  'commands/memory': {
    may: [...COMMANDS, 'find', 'find/index', 'memory', 'memory/bench'],
    system: true,
  },
  'commands/paper': { may: [...COMMANDS, 'paper', 'paper/desk'], system: true },
  'commands/bench': { may: [...COMMANDS, 'screens/show', 'screens/terminal'], system: true },
  commands: {
    may: [...COMMANDS, ...COMMAND_FOLDERS, 'screens/terminal'],
    system: true,
  },
  'screens/kit': { may: [...PIECE, 'job/fold'] },
  'screens/base': { may: SCREENS },
  'screens/add': { may: [...SCREENS, 'screens/ask'] },
  'screens/ask': { may: SCREENS },
  'screens/bench': { may: [...SCREENS, 'screens/ask', 'screens/due', 'screens/find'] },
  'screens/due': { may: SCREENS },
  'screens/find': { may: SCREENS },
  'screens/last': { may: SCREENS },
  'screens/file': { may: SCREENS },
  'screens/draw': { may: SCREENS },
  'screens/paper': { may: SCREENS },
  'screens/parts-list': { may: [...SCREENS, 'screens/ask'] },
  'screens/known': { may: [...SCREENS, 'screens/ask'] },
  'screens/tasks': { may: [...SCREENS, 'screens/ask', 'screens/known', 'screens/trace'] },
  'screens/gate': { may: [...SCREENS, 'screens/ask', 'screens/known', 'screens/tasks'] },
  'screens/note': { may: [...SCREENS, 'screens/ask', 'screens/parts-list', 'screens/tasks'] },
  'screens/trace': { may: [...SCREENS, 'screens/ask'] },
  'screens/job': {
    may: [
      ...SCREENS,
      ...['ask', 'last', 'paper', 'parts-list', 'tasks', 'trace'].map(
        (folder) => `screens/${folder}`,
      ),
    ],
  },
  'screens/piece': {
    may: [
      ...SCREENS,
      ...['ask', 'draw', 'last', 'known', 'paper', 'parts-list'].map(
        (folder) => `screens/${folder}`,
      ),
    ],
  },
  'screens/show': { may: ['settings', ...SCREENS, ...SCREEN_FOLDERS] },
  'screens/terminal': {
    may: [
      ...SCREENS,
      ...['screens/show', 'settings', 'job/save', 'diary', 'diary/git', 'paper/desk'],
      ...['find/index', 'memory/bench', ''],
    ],
    system: true,
    draws: true,
  },
};

const CLOCK = 'The clock comes in as an input (World).';
const WORLD = 'Folder, environment and width come in as inputs (World).';
const VALUES = 'Computing rooms answer with values.';
const DENIED = {
  process: WORLD,
  performance: CLOCK,
  console: VALUES,
  setTimeout: 'Computing rooms do not wait.',
  setInterval: 'Computing rooms do not wait.',
  crypto: 'Ids come in as inputs (World).',
  fetch: 'putback never uses the network.',
  globalThis: 'It would reach the clock and the environment.',
};

/** As the imports of a file of one room spell another: `../../model`. */
function spelled(from: string, to: string): string {
  const path = posix.relative(posix.join('src', from), posix.join('src', to));
  return path === '' ? '.' : path.startsWith('.') ? path : `./${path}`;
}

function override(folder: string, room: Room) {
  const inner = Object.keys(ROOMS).filter((r) => r !== folder && posix.dirname(r) === folder);
  const arrows = {
    group: ['../**', './*/**', ...room.may.map((to) => `!${spelled(folder, to)}/*`)],
    message: `Nothing imports upward: what src/${folder} may import stands in tests/lint/rooms.ts.`,
  };
  const system = {
    group: ['node:*', 'fs', 'path', 'child_process', 'os'],
    message: 'Computing rooms know nothing of files, processes or the system.',
  };
  const ink = { group: ['ink', 'react'], message: 'Only the terminal room draws with Ink.' };
  const patterns = [
    ...(room.may.includes('*') ? [] : [arrows]),
    ...(room.system ? [] : [system]),
    ...(room.draws ? [] : [ink]),
  ];
  return {
    includes: [`src/${folder}/**`, ...inner.map((r) => `!src/${r}/**`)],
    linter: {
      rules: { style: { noRestrictedImports: { level: 'error', options: { patterns } } } },
    },
  };
}

/** What no computing room may reach: the clock, chance, the environment, the network. */
function pure() {
  const folders = Object.keys(ROOMS).filter((folder) => !ROOMS[folder]?.system);
  const options = { deniedGlobals: DENIED };
  return {
    includes: folders.map((folder) => `src/${folder}/*`),
    plugins: ['./tests/lint/clock.grit'],
    linter: { rules: { style: { noRestrictedGlobals: { level: 'error', options } } } },
  };
}

const START = '// Rooms: written by `npm run rooms` from tests/lint/rooms.ts.';
const END = '// End of the rooms.';

/** The text of biome.jsonc with the rules for the rooms as this table has them. */
export function withRooms(settings: string): string {
  const rows = Object.entries(ROOMS)
    .filter(([folder]) => folder !== '')
    .map(([folder, room]) => override(folder, room));
  const rules = [pure(), ...rows].map((row) => `    ${JSON.stringify(row)},\n`).join('');
  const [before, after] = [settings.indexOf(START) + START.length, settings.indexOf(END)];
  return `${settings.slice(0, before)}\n${rules}    ${settings.slice(after)}`;
}

if (import.meta.main) {
  const file = join(import.meta.dirname, '../..', 'biome.jsonc');
  writeFileSync(file, withRooms(readFileSync(file, 'utf8')));
}
