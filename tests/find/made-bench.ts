/** Job files of a made bench, the same ones from the same seed: machines, pieces, part numbers and people are invented. */
import { mkdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export function seeded(seed: number): () => number {
  let s = seed;
  return () => {
    s = (s * 1103515245 + 12345) % 2147483648;
    return s / 2147483648;
  };
}

const MACHINES = [
  'Hollin 400 Twin',
  'Tarn 125',
  'Ostrell lathe 280',
  'Brandau Mäher 46',
  'Velde GS 90',
];
const PIECES = [
  'alternator',
  'gear-cover',
  'carburettor',
  'float-bowl',
  'axle',
  'pump',
  'rotor',
  'intake',
];
const JOBS = ['weeps oil', 'drips', "won't idle", 'bearing is loud', 'läuft unrund', 'new seals'];
const SAID = [
  'soaking, heat tomorrow',
  'Bürste abgenutzt',
  'rust in the thread, cleaned with a tap',
  'the old gasket had been cut by hand',
  'insert M6 set, 2 x d',
  'spring was in the wrong way round',
  'tube of sealant from the shelf above the vice',
];
const STATES = ['stuck', 'rounded', 'sheared', 'pulled'];

/** Text of the n-th job: four pieces, a few tasks and parts, some fifty lines of diary. */
export function madeJob(n: number, seed = 1): string {
  const random = seeded(seed * 7919 + n * 104729 + 17);
  for (let i = 0; i < 5; i++) random();
  const upTo = (most: number) => Math.floor(random() * most);
  const one = <T>(all: readonly T[]): T => all[upTo(all.length)] as T;
  const part = () => `BK-${100 + upTo(900)}-${1000 + upTo(9000)}`;
  const machine = one(MACHINES);
  const pieces = [...PIECES].sort(() => random() - 0.5).slice(0, 4);
  const year = 2012 + upTo(14);
  const lines = [
    'putback: 1',
    `job: "${one(pieces)} ${one(JOBS)}, no. ${n}"`,
    `machine: ${machine}, ${1960 + upTo(60)}, ${upTo(90000)} km`,
    `complaint: Noticed by the owner of house ${upTo(300)} after a run.`,
    'bolts: {S: "M6x25 flange, 8 mm", M: "M6x35 flange, 8 mm", L: "M8x55 hex, 13 mm, 8.8"}',
    'pieces:',
  ];
  pieces.forEach((key, i) => {
    const under = i === 0 ? '' : `\n    under: ${pieces[i - 1]}`;
    lines.push(
      `  ${key}:${under}`,
      `    name: ${key.replace('-', ' ')} ${upTo(20)}`,
      '    bolts: S S M+clip S L S',
      `    torque: ${8 + upTo(5)} N·m, manual ${1 + upTo(9)}-${upTo(40)}`,
      `    joint: gasket ${part()}, dry`,
    );
  });
  lines.push('tasks:', '  weep: {test: Five minutes at idle, limit: no oil at the edge}', 'buy:');
  lines.push(`  gasket: {what: "${part()} gasket", price: ${upTo(40)}.50, once: true}`, 'diary:');
  let minute = 0;
  const put = (rest: string) => {
    minute += 1 + upTo(200);
    const at = new Date(Date.UTC(year, n % 12, 1 + (n % 28), 8, minute)).toISOString().slice(0, 19);
    const id = `x${(n * 97 + lines.length).toString(36).padStart(7, '0').slice(-7)}`;
    lines.push(`  - {at: ${at}+00:00, id: ${id}, ${rest}}`);
  };
  for (const piece of pieces) {
    put(`piece: ${piece}, out: "S S M+clip S L S"`);
    if (random() < 0.4) {
      const at = `piece: ${piece}, hole: ${1 + upTo(6)}, state: ${one(STATES)}`;
      put(`${at}, says: "${one(SAID)}"`);
    }
    put(`piece: ${piece}, removed: all, tray: cup ${1 + upTo(9)}`);
    put(`piece: ${piece}, note: "${one(SAID)}, shelf ${upTo(90)}"`);
  }
  put('buy: gasket, done: here');
  for (const piece of [...pieces].reverse()) {
    for (const hole of [1, 2, 3, 4, 5, 6]) {
      put(`piece: ${piece}, hole: ${hole}, in: ${['S', 'S', 'M+clip', 'S', 'L', 'S'][hole - 1]}`);
    }
    put(`piece: ${piece}, tight: snug`);
    put(`piece: ${piece}, tight: full, set: 10 N·m`);
  }
  put(`task: weep, done: passed, result: passed, says: "${one(SAID)}"`);
  return `${lines.join('\n')}\n`;
}

/** A folder of them, written an hour ago. Answers the size of their text in bytes. */
export function madeBench(folder: string, count: number, seed = 1): number {
  mkdirSync(folder, { recursive: true });
  let bytes = 0;
  for (let n = 0; n < count; n++) {
    const text = madeJob(n, seed);
    const path = join(folder, `job-${String(n).padStart(5, '0')}.yaml`);
    writeFileSync(path, text);
    older(path);
    bytes += Buffer.byteLength(text);
  }
  return bytes;
}

/** As if nobody had touched it for an hour. */
export function older(path: string): void {
  const then = Date.now() / 1000 - 3600;
  utimesSync(path, then, then);
}

/** Writes it at a time that is told from that of the write before: the clock of a disk may stand for some ms. */
export function writeAnew(path: string, text: string): void {
  const time = () => statSync(path, { bigint: true, throwIfNoEntry: false })?.ctimeNs;
  const before = time();
  do writeFileSync(path, text);
  while (time() === before);
}
