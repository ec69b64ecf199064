/** What is left in the tray, and what that says of the holes that are full. */
import { fitOfPiece } from '../job/fold/fit-of.ts';
import { kindLetters } from '../job/judge/found.ts';
import type { PieceNow } from '../model/types.ts';
import { shouldHave } from '../piece/mixup/count.ts';
import { trayHoles } from '../piece/mixup/holes.ts';
import { mixup } from '../piece/mixup/mixup.ts';
import { readLeft, readProud } from '../piece/mixup/read-left.ts';
import type { Mixup } from '../piece/mixup/types.ts';
import type { Typed } from '../piece/typed.ts';
import { type Answer, answer, type Call, misuse, optionText } from './command.ts';
import { openJob, unknownPiece } from './open-job.ts';

export function run(call: Call): Answer {
  const opened = openJob(call.words[0] ?? '', call.world);
  if ('answer' in opened) return opened.answer;
  const { job } = opened;
  const key = call.words[1] ?? '';
  const piece = job.pieces.get(key);
  if (!piece) return unknownPiece(key, job);
  const heights = readProud(
    optionText(call, 'proud') ?? '',
    piece.holes.map((h) => h.name),
  );
  if (!heights.ok) return faulty(heights);
  const holes = trayHoles(piece.holes, heights.value);
  const text = optionText(call, 'left');
  if (text === undefined) {
    const should = shouldHave(holes, job.upper.kinds);
    return answer(
      { piece: key, should: should.counts, total: should.total },
      should.say ?? `${piece.spec.name}: no hole is empty.`,
    );
  }
  const left = readLeft(text, kindLetters(job));
  if (!left.ok) return faulty(left);
  const found = mixup({
    holes,
    left: left.value,
    kinds: job.upper.kinds,
    fitOf: fitOfPiece(job, piece),
  });
  return answer({ piece: key, ...found }, said(piece, found));
}

function faulty(typed: Extract<Typed<unknown>, { ok: false }>): Answer {
  const [first] = typed.faults;
  return misuse(first?.code ?? 'usage', typed.faults.map((f) => f.say).join('\n'));
}

function said(piece: PieceNow, found: Mixup): string {
  const lines = [piece.spec.name];
  if (found.count) lines.push(found.count.say);
  for (const [i, e] of found.explanations.entries()) {
    if (i === MOST) {
      lines.push(
        `… and ${found.explanations.length - MOST} more, each with more holes wrong or harder to miss.`,
      );
      break;
    }
    lines.push(
      `${i === 0 ? 'Most likely' : 'Or'}: ${e.wrong} ${e.wrong === 1 ? 'hole is' : 'holes are'} wrong.`,
    );
    for (const h of e.holes) {
      lines.push(`  One of ${h.among.join(', ')} takes ${h.takes} and holds ${h.holds}. ${h.look}`);
    }
  }
  if (found.explanations.length === 0 && !found.count)
    lines.push('What is left is what the empty holes take.');
  if (found.check.length > 0) {
    lines.push('Look:', ...found.check.map((c) => `  ${c.hole}: ${c.look}`));
  }
  if (found.invisible) lines.push(found.invisible);
  return lines.join('\n');
}

/** So many explanations are read; the ranking has put the likely ones first. */
const MOST = 5;
