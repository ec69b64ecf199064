/** The second job on a machine, on real files: from nothing to the first bolt, and what is carried over. */
import {
  appendFileSync,
  copyFileSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import { expect, it, onTestFinished } from 'vitest';
import { checkJob } from '../../../src/job/check.ts';
import { readJob } from '../../../src/job/read.ts';
import { start } from '../../../src/screens/base/start.ts';
import type { State } from '../../../src/screens/base/state.ts';
import { rowsOf } from '../../../src/screens/show/picture.ts';
import { update } from '../../../src/screens/show/update.ts';
import { createLoop, type Loop } from '../../../src/screens/terminal/loop.ts';
import { filesIn } from '../../../src/screens/terminal/loop-files.ts';
import { shelf } from '../../../src/screens/terminal/shelf.ts';

const NOW = '2026-11-02T10:00:00+01:00';

interface Bench {
  loop: Loop<State>;
  path: string;
  press(...presses: string[]): Promise<void>;
  until(is: (state: State) => boolean): Promise<void>;
}

/** `more`: lines behind the diary of the first job. */
function bench(text: string, more = ''): Bench {
  const folder = mkdtempSync(join(tmpdir(), 'putback-second-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const first = join(folder, 'first.yaml');
  copyFileSync('jobs/ostrell-gearbox.yaml', first);
  if (more !== '') appendFileSync(first, more);
  const path = join(folder, 'second.yaml');
  writeFileSync(path, text);
  let n = 0;
  const id = () => `mark${String(n++).padStart(4, '0')}`;
  const { hands } = filesIn(folder, { now: () => NOW, id }, shelf);
  const { state, effects } = start({
    ...{
      on: { file: 'second.yaml' },
      columns: 80,
      rows: 24,
      colour: false,
      ascii: false,
      now: NOW,
    },
  });
  const loop = createLoop(
    { first: state, effects, update },
    { ...hands, ring: () => {}, soon: (call) => void setImmediate(call) },
  );
  const until = async (is: (state: State) => boolean) => {
    while (!is(loop.state())) await turn();
  };
  return {
    loop,
    path,
    until,
    async press(...presses) {
      for (const press of presses) {
        loop.happen({ on: 'press', press });
        await until((s) => s.waiting === null);
      }
    },
  };
}

const EMPTY = 'putback: 1\njob: Drips again\nmachine: ostrell lathe 280, 910 h\ndiary:\n';

it('from an empty job to the first bolt that is out: at most 12 keys', async () => {
  const { loop, path, press, until } = bench(EMPTY);
  await until((s) => s.earlier !== null);
  const frame = () => rowsOf(loop.state()).join('\n');
  expect(frame()).toContain('Last time on this machine, May');
  const keys: string[] = ['e'];
  await press('e');
  // Down to the cover, of which it knows the sealant.
  while (
    !frame()
      .split('\n')
      .some((l) => l.startsWith('>') && l.includes('sealant'))
  ) {
    keys.push('down');
    await press('down');
  }
  keys.push('t');
  await press('t');
  expect(frame()).toContain('Taken over from first.yaml');
  const isOut = () =>
    readJob(readFileSync(path, 'utf8'), path).entries.some((e) => e.verb === 'out');
  while (!isOut() && keys.length < 20) {
    const { view } = loop.state();
    const bolt = view.screen === 'piece' && view.step.step === 'off';
    // What a gate asks is seen, a bolt is marked, everything else is gone on with.
    const key = view.screen === 'gate' ? 'a' : bolt || view.screen === 'job' ? 'space' : 'enter';
    keys.push(key);
    await press(key);
  }
  const text = readFileSync(path, 'utf8');
  const { entries, upper } = readJob(text, path);
  expect(entries.map((e) => e.verb).filter((verb) => verb !== 'seen')).toEqual(['taken', 'out']);
  expect(upper.pieces.get('gear-cover')?.torque?.text).toBe('24 N·m, manual p. 19');
  expect(checkJob(text, path)).toEqual([]);
  expect(keys.length).toBeLessThanOrEqual(12);
});

it('taken over by one key and taken back by one key: the bytes above the diary are as they were', async () => {
  const text = EMPTY.replace(
    'diary:',
    'pieces:\n  gear-cover: {bolts: H H H D H H H D}\n  # mine\ndiary:',
  );
  const { path, press, until } = bench(text);
  await until((s) => s.earlier !== null);
  await press('space', 'e', 't');
  const taken = readFileSync(path, 'utf8');
  expect(taken).toContain('torque: "24 N·m, manual p. 19"');
  await press('backspace');
  const back = readFileSync(path, 'utf8');
  expect(back.split('diary:')[0]).toBe(text.split('diary:')[0]);
});

it('what was not as printed goes with what was taken over, by the same key', async () => {
  const text = EMPTY.replace(
    'diary:',
    'pieces:\n  gear-cover: {bolts: H H H D H H H D, torque: "24 N·m, manual p. 19"}\ndiary:',
  );
  const more =
    '  - {at: 2026-10-01T10:00:00+02:00, id: truth001, piece: gear-cover, corrected: torque, was: "24 N·m, manual p. 19", says: "20 N·m, bulletin 3"}\n';
  const { loop, path, press, until } = bench(text, more);
  await until((s) => s.earlier !== null);
  await press('space', 'e', 't');
  const living = () => [...(loop.state().open?.job.corrections ?? [])].map((c) => c.says);
  expect(living()).toEqual(['20 N·m, bulletin 3']);
  await press('backspace');
  expect(living()).toEqual([]);
  const back = readFileSync(path, 'utf8');
  expect(back.split('diary:')[0]).toBe(text.split('diary:')[0]);
  expect(readJob(back, path).entries.filter((e) => e.verb === 'undo')).toHaveLength(1);
});
