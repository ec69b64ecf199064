/** What is within reach while a piece is off, and what is done about it. */
import { earlierJobs } from '../../memory/bench/earlier.ts';
import { partsTold } from '../../memory/last.ts';
import { REACH_ANSWERS } from '../../model/types.ts';
import { whileOpen } from '../../plan/trace/while-open.ts';
import { type Answer, answer, type Call, misuse } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';
import { openJob, unknownPiece } from '../base/open-job.ts';

export function run(call: Call): Answer | Promise<Answer> {
  const [file = '', piece = '', word, what] = call.words;
  const opened = openJob(file, call.world);
  if ('answer' in opened) return opened.answer;
  const { job } = opened;
  if (!job.pieces.has(piece)) return unknownPiece(piece, job);
  const now = call.world.now();
  if (word !== undefined) {
    const said = REACH_ANSWERS.find((one) => one === word);
    if (!said || what === undefined)
      return misuse('bad-word', 'Say look, renew, leave or ask, and what.');
    const wish = { do: 'choose', piece, what, answer: said } as const;
    return mark(call, { ...wish, ...beside(call) }, () => `${what}: ${said}.`);
  }
  const { jobs } = earlierJobs(opened.file, job);
  const items = whileOpen(job, piece, now, partsTold(job, jobs, piece, now));
  const name = job.pieces.get(piece)?.spec.name ?? piece;
  const lines = items.map(({ what: thing, from, look, chosen }) => {
    const state = chosen === null ? '' : ` [${chosen}]`;
    return [`${thing}${state} (${from})`, ...(look === '' ? [] : [`  ${look}`])].join('\n');
  });
  const isOn = job.pieces.get(piece)?.away === 'no';
  const none = isOn
    ? `${name} is not off.`
    : 'Nothing that is used once, seals, bears or wears is noted.';
  return answer({ piece, items }, lines.join('\n') || none);
}
