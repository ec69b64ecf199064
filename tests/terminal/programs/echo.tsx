/** A small show of its own over the real loop: says what happened, and breaks when asked to. */
import { spawnSync } from 'node:child_process';
import { writeSync } from 'node:fs';
import { Box, Text } from 'ink';
import type { Effect, Happening } from '../../../src/screens/base/state.ts';
import type { Show } from '../../../src/screens/terminal/show.ts';
import { mark } from '../marks.ts';

export interface Echo {
  columns: number;
  rows: number;
  said: string;
  answered: number;
}

/** With HELD what draws is not there before SIGUSR2 comes. */
const goOn = process.env.HELD
  ? new Promise<void>((go) => {
      const alive = setInterval(() => {}, 1000);
      process.once('SIGUSR2', () => {
        clearInterval(alive);
        go();
      });
    })
  : null;

/** After `S`: at the next key it makes the mark `waits`, and does nothing before there is more to read. */
let waits = false;
function wait(): void {
  waits = false;
  writeSync(1, mark('waits'));
  // It only looks: what is there stays to be read.
  spawnSync('bash', ['-c', 'until read -t 0; do :; done'], { stdio: 'inherit' });
}

const wish = { do: 'note', text: 'x' } as const;

/** Upper-case letters ask for something; the rest is said. */
function update(state: Echo, h: Happening): { state: Echo; effects: readonly Effect[] } {
  const effects: Effect[] = [];
  if (h.on === 'size') return { state: { ...state, columns: h.columns, rows: h.rows }, effects };
  if (h.on === 'recorded') return { state: { ...state, answered: state.answered + 1 }, effects };
  if (h.on === 'paste')
    return { state: { ...state, said: `${state.said}<${h.text.replace(/\s/g, '|')}>` }, effects };
  if (h.on !== 'press') return { state, effects };
  if (waits) wait();
  switch (h.press) {
    case 'Q':
      return { state, effects: [{ do: 'quit' }] };
    case 'R':
      return { state, effects: [{ do: 'record', file: 'f', wish }] };
    case 'G':
      return { state, effects: [{ do: 'ring' }] };
    case 'H':
      throw new Error('a handler broke \x1b]0;owned\x07');
    case 'J':
      Promise.reject(new Error('nobody waited for this'));
      return { state, effects };
    case 'T':
      setImmediate(() => {
        throw new Error('a timer broke');
      });
      return { state, effects };
    case 'S':
      waits = true;
      return { state, effects };
    case 'K':
      console.error('a library complains');
      return { state, effects };
    default: {
      const word = h.press.length === 1 ? h.press : `(${h.press})`;
      return { state: { ...state, said: state.said + word }, effects };
    }
  }
}

function App({ state }: { state: Echo }) {
  if (state.said.includes('B')) throw new Error('the picture broke');
  const lines = state.said.match(new RegExp(`.{1,${Math.max(1, state.columns - 2)}}`, 'gsu')) ?? [];
  return (
    <Box flexDirection="column" width={state.columns} height={state.rows} overflow="hidden">
      <Text wrap="truncate">
        echo {state.columns}x{state.rows} pid {process.pid}.
      </Text>
      <Text wrap="truncate" color="red">
        colour
      </Text>
      {lines.map((line, i) => (
        <Text key={i}>{`[${line}]`}</Text>
      ))}
    </Box>
  );
}

export async function load(): Promise<Show<Echo>> {
  return {
    first: { columns: 0, rows: 0, said: '', answered: 0 },
    effects: [],
    update,
    async app() {
      await goOn;
      if (process.env.HELD === 'broken') throw new Error('no drawing');
      return App;
    },
    frame: () => ({
      rows: [process.env.HELD ? `first pid ${process.pid}.` : 'first'],
      cursor: null,
    }),
    hands: {
      // A slow disk: half a second for a mark.
      record: ({ file, wish: w }) =>
        new Promise((done) =>
          setTimeout(
            () =>
              done({
                on: 'recorded',
                file,
                wish: w,
                result: { ok: false, unsaved: { code: 'x', say: '', fix: '' } },
              }),
            500,
          ),
        ),
      open: async () => ({ on: 'quiet', say: '' }),
      start: async () => ({ on: 'quiet', say: '' }),
      list: async () => ({ on: 'quiet', say: '' }),
      earlier: async () => null,
      find: async () => null,
      due: async () => null,
      milestone: async () => null,
      print: async () => null,
      show: async () => null,
    },
    attend: () => ({ pressed: () => {}, stop: () => {} }),
    takesCtrlZ: () => false,
    asksFirst: () => false,
    farewell: (state) => ({
      say: `bye after ${state.said} and ${state.answered} marks`,
      unsaved: false,
    }),
  };
}
