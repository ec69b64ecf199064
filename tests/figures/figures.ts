/** `npm run figures`: measures every group, prints the table and keeps it in figures.md. */
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Figures, Row } from './measure.ts';

/** One file a group, each with its own `figures` or, where nothing has to be waited for, `rows`. */
const GROUPS = [
  'start',
  'keys',
  'disk',
  'long',
  'never-lost',
  'sequence',
  'fit',
  'mixup',
  'plan',
  'trace',
  'paper',
  'bench',
  'presses',
];

const rows: Row[] = [];
for (const group of GROUPS) {
  const file = join(import.meta.dirname, `${group}.ts`);
  if (!existsSync(file)) continue;
  const made: { figures?: Figures; rows?: () => Row[] } = await import(file);
  process.stderr.write(`${group} …\n`);
  rows.push(...((await made.figures?.()) ?? made.rows?.() ?? []));
}

const number = (n: number) => (n < 10 ? n.toFixed(2) : n.toFixed(0));
const cells = rows.map(({ what, against, ratio, goal, measured }) => {
  const met = ratio <= goal ? 'met' : 'not met';
  return [what, against, number(ratio), `≤ ${goal}`, met, measured];
});
const heads = ['what', 'against', 'ratio', 'goal', '', 'here'];
/** Columns of numbers stand at the right. */
const RIGHT = new Set([2, 3]);

/** Columns as wide as their widest cell, as the formatter of the project lays tables out. */
function layOut(lines: readonly string[][]): string {
  const widths = heads.map((_, i) => Math.max(3, ...lines.map((l) => l[i]?.length ?? 0)));
  const fit = (cell: string, i: number) =>
    RIGHT.has(i) ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0);
  const rule = widths.map((w, i) => (RIGHT.has(i) ? `${'-'.repeat(w - 1)}:` : '-'.repeat(w)));
  const [head = [], ...rest] = lines.map((l) => l.map(fit));
  return [head, rule, ...rest].map((l) => `| ${l.join(' | ')} |`).join('\n');
}
const table = layOut([heads, ...cells]);

process.stdout.write(`${table}\n`);
writeFileSync(
  join(import.meta.dirname, 'figures.md'),
  `# Figures

What \`npm run figures\` last measured. Both sides of a ratio are measured by turns in the same run, medians
where nothing else is said: so the ratios hold on another machine, the times in the last column do not.

${table}
`,
);
// Pseudo-terminals of programs that have ended keep Node waiting.
process.exit();
