/** What is left in the tray, and what that says of the holes that are full. */
import { kindLetters } from '../../job/judge/marks/found.ts';
import type { PieceNow } from '../../model/types.ts';
import { shouldHave } from '../../piece/mixup/count.ts';
import { trayHoles } from '../../piece/mixup/holes.ts';
import { mixup } from '../../piece/mixup/mixup.ts';
import { readLeft, readProud } from '../../piece/mixup/read-left.ts';
import type { Mixup } from '../../piece/mixup/types.ts';
import type { Typed } from '../../piece/typed.ts';
import { fitsOf, looksSaid, traySaid } from '../../plan/piece/answers.ts';
import { type Answer, answer, type Call, misuse, optionText } from '../base/command.ts';
import { openPiece } from '../base/open-job.ts';

export function run(call: Call): Answer {
  const opened = openPiece(call);
  if ('answer' in opened) return opened.answer;
  const { job, key, piece } = opened;
  const { kinds } = job.upper;
  if (optionText(call, 'proud')?.trim() === '')
    return misuse('no-figure', '--proud is empty: type hole and height as 4=12.5.');
  const heights = readProud(
    optionText(call, 'proud') ?? '',
    piece.holes.map((h) => h.name),
  );
  if (!heights.ok) return faulty(heights);
  const holes = trayHoles(piece.holes, heights.value);
  const text = optionText(call, 'left');
  if (text === undefined) {
    const should = shouldHave(holes, kinds);
    const say = should.say ?? `${piece.spec.name}: no hole is empty.`;
    const asked = { piece: key, should: should.counts, total: should.total };
    if (heights.value.size === 0) return answer(asked, say);
    // Of the tray nothing is said yet: heads are judged as if it held what it should.
    const left = new Map(Object.entries(should.counts));
    const { check } = mixup({ holes, left, kinds, fitOf: fitsOf(job, piece) });
    const lines = check.length === 0 ? [NO_ODD_HEAD] : lookSaid(check);
    return answer({ ...asked, check }, [say, ...lines].join('\n'));
  }
  const left = readLeft(text, kindLetters(job));
  if (!left.ok) return faulty(left);
  const found = mixup({
    holes,
    left: left.value,
    kinds,
    fitOf: fitsOf(job, piece),
  });
  return answer({ piece: key, ...found }, told(piece, found));
}

function faulty(typed: Extract<Typed<unknown>, { ok: false }>): Answer {
  const [first] = typed.faults;
  return misuse(first?.code ?? 'usage', typed.faults.map((f) => f.say).join('\n'));
}

/** What it comes to, and where to look. */
function told(piece: PieceNow, found: Mixup): string {
  return [piece.spec.name, ...traySaid(found), ...lookSaid(found.check)].join('\n');
}

function lookSaid(check: Mixup['check']): string[] {
  return check.length === 0 ? [] : ['Look:', ...looksSaid(check).map((line) => `  ${line}`)];
}

const NO_ODD_HEAD = 'Each head that was measured stands where its own bolt would.';
