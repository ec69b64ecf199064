/** Each example of the help does what it says, on a job in which there is what it names. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { allCommands } from '../../../src/commands/table.ts';
import { jpeg } from '../../paper/camera.ts';
import { Pinned } from '../pinned.ts';

const COVER = `putback: 1
job: Left cover weeps oil
machine: Hollin 400 Twin, 1998
bolts: {S: "M6x25 flange, 8 mm", M: "M6x35 flange, 8 mm", L: "M6x55 flange, 8 mm"}
pieces:
  alternator: {bolts: S S S M+clip S S S+copper S S L S, torque: "10 N·m, manual 2-17", into: cast aluminium, thick: 12, thread: 0..16}
tasks:
  drain: {do: Drain the oil}
  chain: {adjust: Chain, limit: 20..30 mm}
  seal: {decide: "Renew the lip seal while it is open?", chance: 1 in 6, now: "12.50", later: "30, 3 h"}
buy:
  gasket: {what: HL-1142 cover gasket}
diary:
  - {at: 2026-04-01T10:00:00+00:00, id: k3Vb9xQe, note: "500-2103 fits, stuck for an hour"}
`;
const START = `putback: 1
job: Does not start
suspects: {plug: {what: Plug fouled}, coil: {what: Coil open}}
checks: {primary: {check: "Primary of the coil", shows: coil, limit: 0.3..0.6 ohm, takes: 3 min}}
diary:
`;

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'putback-examples-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function fill(): void {
  const job = (name: string, text: string) => writeFileSync(join(folder, name), text);
  job('cover.yaml', COVER);
  job('start.yaml', START);
  for (const name of ['earlier', 'base', 'ours', 'theirs']) job(`${name}.yaml`, COVER);
  mkdirSync(join(folder, 'repairs'));
  mkdirSync(join(folder, 'DCIM'));
  const picture = jpeg({ clock: '2026:04:11 18:00:00' });
  for (const name of ['DCIM/1.jpg', 'as-it-was.jpg']) writeFileSync(join(folder, name), picture);
}

const words = (line: string) =>
  [...line.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');
/** What a shell makes of a pattern, and nothing that opens a window or leaves the folder. */
const asRun = (line: string) =>
  words(line)
    .map((word) => word.replace('*.jpg', '1.jpg').replace('*.yaml', 'cover.yaml'))
    .filter((word) => word !== '--open');

/** What has to be so before: bolts out, then in; a part put in to try. */
const BEFORE: Readonly<Record<string, readonly string[]>> = {
  'off ': ['out cover.yaml alternator --all'],
  'paper cover.yaml labels': ['out cover.yaml alternator --all', 'off cover.yaml alternator'],
  'photo cover.yaml DCIM': ["out cover.yaml alternator --all --at '2026-04-11T18:02:00+00:00'"],
  'on ': ['out cover.yaml alternator --all', 'off cover.yaml alternator'],
  'in ': [
    'out cover.yaml alternator --all',
    'off cover.yaml alternator',
    'on cover.yaml alternator',
  ],
  'last cover.yaml': ['hole earlier.yaml alternator 9 stuck'],
  mixup: ['out cover.yaml alternator --all'],
  'while-open': ['out cover.yaml alternator --all', 'off cover.yaml alternator'],
  cleared: ["inside cover.yaml alternator '2 rags'"],
  'trace start.yaml plug same': ["trace start.yaml plug --put 'new plug'"],
};

/** What stops there answers no. */
const STOPS = ['gate cover.yaml prying'];

const examples = allCommands()
  .flatMap(({ examples }) => examples)
  .filter((line) => !line.startsWith('practice'));

describe('the example', () => {
  it.each(examples)('putback %s', async (line) => {
    const [name = ''] = words(line);
    if (name !== 'new') fill();
    const putback = new Pinned(folder);
    const before = Object.entries(BEFORE).find(([start]) => line.startsWith(start));
    for (const first of before?.[1] ?? [])
      expect(await putback.run(...asRun(first)), first).toMatchObject({ exit: 0 });
    const { exit, err } = await putback.run(...asRun(line));
    const is = STOPS.some((start) => line.startsWith(start)) ? 1 : 0;
    expect({ exit, err: exit === is ? '' : err }).toEqual({ exit: is, err: '' });
  });
});
