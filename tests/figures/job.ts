/** Job files of any size: one piece off, back in by fingers and tightened once, a line for each bolt. */

const KINDS = ['S', 'M', 'L'];
const AT = '2026-05-02T10:11:05+02:00';

const id = (n: number) => `a${n.toString(36).padStart(7, '0')}`;
const kindOf = (hole: number) => KINDS[hole % KINDS.length] ?? 'S';

/** Text of a job with one piece of `holes` bolts; its last pass is still to do. */
export function bigJob(holes: number): string {
  return coversJob(1, holes);
}

/** The same with several such pieces. */
export function coversJob(covers: number, holes: number): string {
  const names = Array.from({ length: holes }, (_, i) => i + 1);
  const keys = Array.from({ length: covers }, (_, i) => (i === 0 ? 'cover' : `cover-${i + 1}`));
  const wide = Math.ceil(Math.sqrt(holes * 2));
  const rows = Array.from({ length: Math.ceil(holes / wide) }, (_, r) =>
    names.slice(r * wide, (r + 1) * wide).map((n) => String(n).padEnd(4)),
  ).map((row) => `      ${[...row, ...Array(wide - row.length).fill('.   ')].join('').trimEnd()}`);
  let n = 0;
  return [
    'putback: 1',
    'job: A cover with many bolts',
    'bolts:',
    '  S: M6x25 flange, 8 mm',
    '  M: M6x35 flange, 8 mm',
    '  L: M6x55 flange, 8 mm',
    'pieces:',
    ...keys.flatMap((key) => [
      `  ${key}:`,
      `    bolts: ${names.map(kindOf).join(' ')}`,
      '    torque: 10 N·m, manual 2-17',
      '    passes: [snug, full]',
      '    map: |',
      ...rows,
    ]),
    'diary:',
    ...keys.flatMap((key) => {
      const line = (rest: string) => `  - {at: ${AT}, id: ${id(n++)}, piece: ${key}, ${rest}}`;
      return [
        ...names.map((h) => line(`hole: ${h}, out: ${kindOf(h)}`)),
        line('removed: all, tray: cup 2'),
        ...names.map((h) => line(`hole: ${h}, in: ${kindOf(h)}`)),
        ...names.map((h) => line(`hole: ${h}, tight: snug`)),
      ];
    }),
    '',
  ].join('\n');
}
