/** What is printed and not so here, in words, for whoever comes back to a job or takes it apart again. */
import { besidePrinted } from '../../job/truth/corrections.ts';
import { safeLine } from '../../model/safe.ts';
import type { Correction, Job } from '../../model/types.ts';
import { flow } from '../kit/both.ts';
import { type Line, type Style, span } from '../kit/text.ts';
import { subjectSaid } from './known-words.ts';

export interface Corrected {
  text: string;
  printed: string;
}

/** Of these alone, where some are named; the latest is not more than the others, so they stand as they were made. */
export function correctionsSaid(job: Job, counts: (c: Correction) => boolean): Corrected[] {
  return job.corrections
    .filter(counts)
    .map((c) => ({ text: `${subjectSaid(job, c)}: ${c.says}`, printed: c.printed }));
}

/** A text of the plan, wrapped; what it says of print that is not so is struck in it. */
export function wrapStruck(job: Job, text: string, columns: number, style: Style = {}): Line[] {
  let spans: Line = [span(text, style)];
  for (const { printed } of job.corrections) {
    const beside = besidePrinted('', printed);
    spans = spans.flatMap((s) => {
      const parts = s.text.split(safeLine(beside));
      return parts.flatMap((rest, i) => [
        ...(i === 0 ? [] : struckIn(beside, style)),
        { ...s, text: rest },
      ]);
    });
  }
  return flow(spans, columns);
}

/** ` (not `, the printed text struck, and what follows it. */
function struckIn(beside: string, style: Style): Line {
  const [open, close] = [' (not ', ', as printed)'];
  const printed = beside.slice(open.length, beside.length - close.length);
  return [span(open, style), span(printed, { ...style, struck: true }), span(close, style)];
}

/** It matters still: the piece is not back and tight, the task is not done. */
export function isOpen(job: Job, { piece, task }: Correction): boolean {
  if (task !== undefined) return (job.tasks.get(task)?.done ?? null) === null;
  const where = job.pieces.get(piece ?? '')?.where;
  return where === 'off' || where === 'open' || where === 'on';
}
