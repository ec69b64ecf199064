/** Every paper of a job in both sizes, by the name that the command has for it. */
import type { Job } from '../../src/model/types.ts';
import type { NoPaper, Paper, PaperName } from '../../src/paper/ask.ts';
import { blank } from '../../src/paper/blank.ts';
import { card } from '../../src/paper/card.ts';
import { labels } from '../../src/paper/labels.ts';
import type { SizeName } from '../../src/paper/page.ts';
import { type ReportPicture, report } from '../../src/paper/report.ts';
import { sheet } from '../../src/paper/sheet.ts';
import { steps } from '../../src/paper/steps.ts';
import { tag } from '../../src/paper/tag.ts';
import { NOW, pieceIn } from './jobs.ts';

const WRENCHES = [
  { name: 'small', from: 2, to: 25, unit: 'N·m', step: 0.5, length: 250 },
  { name: 'large', from: 20, to: 120, unit: 'N·m', step: 1, length: 450 },
];

export function allPapers(
  job: Job,
  key: string,
  size: SizeName,
  say = 'Kim, at the bench',
  pictures: readonly ReportPicture[] = [],
): Record<PaperName, Paper | NoPaper> {
  const piece = pieceIn(job, key);
  const ask = { job, now: NOW, size, wrenches: WRENCHES };
  return {
    card: card({ ...ask, piece, across: null }),
    blank: blank({ ...ask, row: new Array(13).fill(null), name: say }),
    labels: labels({ ...ask, piece: null, all: true, label: { width: 70, height: 37 } }),
    tag: tag({ ...ask, who: say }),
    sheet: sheet({ ...ask, piece, question: say, show: new Set(['names', 'places', 'prices']) }),
    report: report({ ...ask, jobs: [job], by: say, pictures: [pictures], inside: true }),
    steps: steps(ask),
  };
}

export function htmlOf(made: Paper | NoPaper): string {
  if ('html' in made) return made.html;
  throw new Error(made.say);
}
