/** What to look at before one of the five moments where jobs go wrong, and what was seen to. */
import { near } from '../model/nearword.ts';
import { MOMENTS, type Moment } from '../model/types.ts';
import { gate, isPassed } from '../plan/gates/gate.ts';
import type { GateItem } from '../plan/gates/items.ts';
import { openTimes, sayOpenTime } from '../plan/open-time.ts';
import { nowHere } from '../world.ts';
import { type Answer, answer, type Call, misuse, optionText } from './command.ts';
import { beside, mark } from './mark.ts';
import { openJob, unknownPiece } from './open-job.ts';

const HOW = ['seen', 'struck', 'added'] as const;

export async function run(call: Call): Promise<Answer> {
  const [file = '', said = '', piece] = call.words;
  const opened = openJob(file, call.world);
  if ('answer' in opened) return opened.answer;
  const moment = MOMENTS.find((m): m is Moment => m === said);
  if (!moment) {
    const close = near(said, MOMENTS);
    const hint = close ? `Did you mean ${close}?` : `There are ${MOMENTS.join(', ')}.`;
    return misuse('no-such-moment', `No moment ${said}. ${hint}`);
  }
  if (moment !== 'start' && piece === undefined)
    return misuse('usage', `Which piece? gate FILE ${moment} PIECE`);
  if (piece !== undefined && !opened.job.pieces.has(piece)) return unknownPiece(piece, opened.job);
  const how = HOW.find((h) => optionText(call, h) !== undefined);
  const place = moment === 'start' || piece === undefined ? {} : { piece };
  if (how !== undefined) {
    const item = optionText(call, how) ?? '';
    const left = gate(opened.job, moment, piece ?? null, nowHere(call.world)).items.filter(
      ({ stops, done }) => stops && !done,
    );
    const stillStops =
      item === 'all' && left.length > 0
        ? ` What stops still does: ${left.map(({ key }) => key).join(', ')}.`
        : '';
    return mark(
      call,
      { do: 'gate', moment, how, item, ...place, ...beside(call) },
      () => `Before ${moment}: ${item} ${how}.${stillStops}`,
    );
  }
  const found = gate(opened.job, moment, piece ?? null, nowHere(call.world));
  const passed = isPassed(found);
  const lines = found.items.map(itemSaid);
  const now = nowHere(call.world);
  const open = openTimes(opened.job, now).filter((t) => moment === 'sealing' && t.piece === piece);
  const closed = open.map((t) => `${t.name}, ${sayOpenTime(t, now)}.`);
  const text = [...lines, ...closed].join('\n') || 'Nothing to look at.';
  const json = {
    ok: passed,
    moment,
    piece: piece ?? null,
    passed,
    items: found.items,
    ...(moment === 'sealing' ? { open } : {}),
  };
  return { ...answer(json, text), exit: passed ? 0 : 1, json };
}

/** What stops says why and the way out; what is loud is marked, and let through. */
function itemSaid({ key, say, done, loud, stop }: GateItem): string {
  if (done) return `[x] ${key}: ${say}`;
  if (stop !== null) return `STOP ${key}: ${stop}`;
  return `${loud ? '[!]' : '[ ]'} ${key}: ${say}`;
}
