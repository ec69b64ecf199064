/** `npm run figures`: measures every group, prints the table and keeps it in figures.md. */
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Figures, Row } from './measure.ts';

/** One file a group, each with its own `figures` or, where nothing has to be waited for, `rows`. */
const GROUPS = ['start', 'keys', 'disk', 'sequence', 'mixup'];

const rows: Row[] = [];
for (const group of GROUPS) {
  const file = join(import.meta.dirname, `${group}.ts`);
  if (!existsSync(file)) continue;
  const made: { figures?: Figures; rows?: () => Row[] } = await import(file);
  process.stderr.write(`${group} …\n`);
  rows.push(...((await made.figures?.()) ?? made.rows?.() ?? []));
}

const number = (n: number) => (n < 10 ? n.toFixed(2) : n.toFixed(0));
const lines = rows.map(({ what, against, ratio, goal, measured }) => {
  const met = ratio <= goal ? 'met' : 'not met';
  return `| ${what} | ${against} | ${number(ratio)} | ≤ ${goal} | ${met} | ${measured} |`;
});
const table = [
  '| what | against | ratio | goal | | here |',
  '| --- | --- | ---: | ---: | --- | --- |',
  ...lines,
].join('\n');

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
