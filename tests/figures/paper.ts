/** Paper for large jobs: 200 holes, 40 pieces, 300 photographs. Time, size, and what it takes of the memory. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { jpeg } from '../paper/camera.ts';
import { byTurns, type Figures, median, ms, type Row } from './measure.ts';

const program = resolve(import.meta.dirname, '../../dist/putback.js');
const MB = 1 << 20;
const [HOLES, PIECES, PHOTOS, KB] = [200, 40, 300, 500];
const MEMORY = 300;
const RUNS = 5;

/** Pieces of `each` holes, off and on again, and tight. */
function jobText(pieces: number, each: number, photos = 0): string {
  const id = (n: number) => `id${String(n).padStart(6, '0')}`;
  const at = (n: number) =>
    `2026-04-11T${String(8 + Math.floor(n / 60)).padStart(2, '0')}:${String(n % 60).padStart(2, '0')}:00+02:00`;
  const names = Array.from({ length: pieces }, (_, i) => `piece-${i + 1}`);
  const row = new Array(each).fill('S').join(' ');
  const marks = names.flatMap((name) => [
    `piece: ${name}, out: S`,
    `piece: ${name}, removed: all`,
    `piece: ${name}, in: S`,
    `piece: ${name}, tight: snug`,
    `piece: ${name}, tight: full, set: 10 N·m`,
  ]);
  const pictures = Array.from(
    { length: photos },
    (_, i) => `piece: piece-1, photo: photos/${i}.jpg, shot: "${at(i)}"`,
  );
  return `putback: 1
job: A large job
machine: Hollin 400 Twin
bolts: {S: "M6x25 flange, 8 mm"}
pieces:
${names.map((name) => `  ${name}: {bolts: ${row}, torque: "10 N·m, manual 2-17", joint: new gasket}`).join('\n')}
diary:
${[...marks, ...pictures].map((mark, i) => `  - {at: ${at(i % 600)}, id: ${id(i)}, ${mark}}`).join('\n')}
`;
}

/** A photograph of so many bytes: coded data that nobody decodes here. */
function photo(bytes: number): Buffer {
  const small = jpeg({ clock: '2026:04:11 10:00:00', orientation: 6, secret: 'Kim' });
  const end = small.lastIndexOf(Buffer.from([0xff, 0xd9]));
  return Buffer.concat([small.subarray(0, end), Buffer.alloc(bytes, 0x55), small.subarray(end)]);
}

const HWM = `data:text/javascript,process.on('exit',()=>process._rawDebug('peak',process.resourceUsage().maxRSS))`;

/** ms of a whole run, and the most memory it had, MB. */
function run(folder: string, ...argv: string[]): { took: number; peak: number } {
  const from = performance.now();
  const { status, stderr } = spawnSync(process.execPath, ['--import', HWM, program, ...argv], {
    cwd: folder,
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`${argv.join(' ')}: ${stderr}`);
  const took = performance.now() - from;
  return { took, peak: Number(/peak (\d+)/.exec(stderr)?.[1] ?? Number.NaN) / 1024 };
}

export const figures: Figures = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'putback-figures-'));
  try {
    writeFileSync(join(folder, 'holes.yaml'), jobText(1, HOLES));
    writeFileSync(join(folder, 'pieces.yaml'), jobText(PIECES, 12));
    writeFileSync(join(folder, 'photos.yaml'), jobText(1, 4, PHOTOS));
    mkdirSync(join(folder, 'photos'));
    for (let i = 0; i < PHOTOS; i++)
      writeFileSync(join(folder, 'photos', `${i}.jpg`), photo(KB << 10));
    return [
      await against(folder, `a card of ${HOLES} holes`, 'holes.yaml', ['card', 'piece-1'], 3),
      await against(folder, `a report of ${PIECES} pieces`, 'pieces.yaml', ['report'], 3),
      await against(folder, `labels for ${PIECES} pieces`, 'pieces.yaml', ['labels', '--all'], 3),
      ...photographs(folder),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** The whole run against one that only says how the same job stands. */
async function against(
  folder: string,
  what: string,
  job: string,
  [paper = '', ...more]: string[],
  goal: number,
): Promise<Row> {
  const { one, other } = await byTurns(
    RUNS,
    async () => run(folder, 'paper', job, paper, ...more, '-o', 'page.html').took,
    async () => run(folder, 'status', job).took,
  );
  const [a, b] = [median(one), median(other)];
  const size = statSync(join(folder, 'page.html')).size;
  const measured = `${ms(a)}, ${Math.round(size / 1024)} kB / ${ms(b)}`;
  return { what, against: 'status of that job', ratio: a / b, goal, measured };
}

function photographs(folder: string): Row[] {
  const { took, peak } = run(
    folder,
    'paper',
    'photos.yaml',
    'report',
    '--inside',
    '-o',
    'page.html',
  );
  const size = statSync(join(folder, 'page.html')).size;
  const bytes = PHOTOS * (KB << 10);
  const beside = run(folder, 'paper', 'photos.yaml', 'report', '-o', 'beside.html');
  const said = `${PHOTOS} photographs of ${KB} kB`;
  return [
    {
      what: `size of a page with ${said} inside`,
      against: 'the photographs themselves',
      ratio: size / bytes,
      goal: 1.4,
      measured: `${Math.round(size / MB)} MB in ${ms(took)} / ${Math.round(bytes / MB)} MB`,
    },
    {
      what: `memory for ${said} inside`,
      against: `${MEMORY} MB`,
      ratio: peak / MEMORY,
      goal: 1,
      measured: `${Math.round(peak)} MB`,
    },
    {
      what: `memory for ${said} beside`,
      against: `${MEMORY} MB`,
      ratio: beside.peak / MEMORY,
      goal: 1,
      measured: `${Math.round(beside.peak)} MB in ${ms(beside.took)}`,
    },
  ];
}
