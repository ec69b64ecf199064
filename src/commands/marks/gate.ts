/** What to look at before one of the five moments where jobs go wrong, and what was seen to. */
import { near } from '../../model/nearword.ts';
import { safe } from '../../model/safe.ts';
import { MOMENTS, type Moment } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { gate, gateInWords, isPassed } from '../../plan/gates/gate.ts';
import { type GateItem, type ItemInWords, notAnswered, questions } from '../../plan/gates/items.ts';
import { openTimes, sayOpenTimeOf } from '../../plan/seal/open-time.ts';
import { nowHere } from '../../world.ts';
import { type Answer, answer, type Call, misuse, optionText, refused } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';
import { openJob, unknownPiece } from '../base/open-job.ts';

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
    const items = gateInWords(opened.job, moment, piece ?? null, nowHere(call.world));
    const odd = how === 'added' ? null : oddItem(items, how, item, call);
    if (odd) return odd;
    const left = items.filter(({ stops, done }) => stops && !done);
    const marked = await mark(
      call,
      { do: 'gate', moment, how, item, ...place, ...beside(call) },
      () => `Before ${moment}: ${item} ${how}.`,
    );
    if (item.trim() !== 'all' || how !== 'seen') return marked;
    return stillStopped(stillAsked(marked, questions(items)), left);
  }
  const found = gate(opened.job, moment, piece ?? null, nowHere(call.world));
  const passed = isPassed(found);
  const lines = found.items.map(itemSaid);
  const now = nowHere(call.world);
  const open = openTimes(opened.job, now).filter((t) => moment === 'sealing' && t.piece === piece);
  const closed = open.map((t) => sayOpenTimeOf(t, now));
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

/** All was ticked, and questions among it have no answer by that. */
function stillAsked(marked: Answer, asked: readonly ItemInWords[]): Answer {
  const said = notAnswered(asked);
  if (marked.exit !== 0 || said === null) return marked;
  const json = { ...marked.json, asked: asked.map(({ key }) => key) };
  return { ...marked, json, text: `${marked.text} ${safe(said)}` };
}

/** All was ticked, and what stops was not: noted, and the answer is no. */
function stillStopped(marked: Answer, left: readonly ItemInWords[]): Answer {
  if (marked.exit !== 0 || left.length === 0) return marked;
  const stops = left.map(({ key }) => key);
  return {
    ...marked,
    exit: 1,
    json: { ...marked.json, ok: false, passed: false, stops },
    text: `${marked.text} What stops still does: ${stops.join(', ')}.`,
  };
}

/** A name that no item has here; and what the job knows not to be so, which no tick makes so. */
function oddItem(
  items: readonly ItemInWords[],
  how: 'seen' | 'struck',
  item: string,
  call: Call,
): Answer | null {
  if (item.trim() === 'all' && how === 'seen') return null;
  const keys = [...new Set(items.map(({ key }): string => key))];
  const own = items.filter(({ key }) => key === item.trim());
  if (own.length === 0) {
    const close = near(item, keys);
    const there = keys.length === 0 ? 'Nothing is to be looked at.' : `There are ${list(keys)}.`;
    const hint = close ? `Did you mean ${close}? ${there}` : there;
    return misuse('no-such-item', `No item ${item === '' ? '“”' : item} at this gate. ${hint}`);
  }
  const open = own.find(({ done, known }) => known && !done);
  if (how !== 'seen' || !open || optionText(call, 'because') !== undefined) return null;
  return refused(
    {
      code: 'not-so-yet',
      say: `${open.stop ?? open.say} ${open.key === 'unread' ? 'A' : 'That is known by the diary: a'} tick does not change it.`,
      data: { item: open.key },
      overrulable: true,
    },
    'If it is so all the same, say why with --because.',
  );
}

/** What stops says why and the way out; what is loud is marked, and let through. */
function itemSaid({ key, say, done, loud, stop }: GateItem): string {
  if (done) return `[x] ${key}: ${say}`;
  if (stop !== null) return `STOP ${key}: ${stop}`;
  return `${loud ? '[!]' : '[ ]'} ${key}: ${say}`;
}
