/** What is to be had, how far each has come and what it holds up; and marks how far one has come. */

import { near } from '../../model/nearword.ts';
import { noSuchDay } from '../../model/no-such-day.ts';
import { quoted } from '../../model/safe.ts';
import { buyRow } from '../../model/states/buys.ts';
import { typedDate } from '../../model/typed-date.ts';
import { BUY_STATES, type BuyState } from '../../model/types.ts';
import { buyRows, printCsv } from '../../plan/buy/csv.ts';
import { type Buy, buyList, newBuy } from '../../plan/buy/list.ts';
import { saidBack, sayBefore } from '../../plan/buy/say.ts';
import { sayDate } from '../../plan/time/days.ts';
import { nowHere } from '../../world.ts';
import { type Answer, answer, type Call, misuse, optionText } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';
import { openJob } from '../base/open-job.ts';

export async function run(call: Call): Promise<Answer> {
  const [file = '', said, state] = call.words;
  const opened = openJob(file, call.world);
  if ('answer' in opened) return opened.answer;
  const list = buyList(opened.job, nowHere(call.world));
  if (said === undefined) return listed(call, list, nowHere(call.world));
  const known = BUY_STATES.find((s): s is BuyState => s === state);
  if (!known) {
    const close = near(state ?? '', BUY_STATES);
    const hint = close ? `Did you mean ${close}?` : `There are ${BUY_STATES.join(', ')}.`;
    return misuse('no-such-state', `No state ${state ?? ''} of a thing to buy. ${hint}`);
  }
  const thing = meantBy(list, said);
  const key = thing?.buy ?? said;
  const add = thing ? newBuy(thing) : null;
  const day = optionText(call, 'promised');
  const now = call.world.now();
  const promised = day === undefined ? undefined : typedDate(day, now);
  if (promised === null) {
    const none = noSuchDay(day ?? '')?.say;
    const like = '2026-04-25, 25 April, 25.4., 5 days';
    return misuse('bad-date', none ?? `${quoted(day ?? '')} is no day: ${like}.`);
  }
  const tray = optionText(call, 'tray');
  const wish = {
    do: 'buy',
    buy: key,
    state: known,
    ...(promised === undefined ? {} : { promised }),
    ...(tray === undefined ? {} : { tray }),
    ...(add ? { add } : {}),
    ...beside(call),
  } as const;
  const when = promised === undefined ? '' : `, promised for ${sayDate(promised, now)}`;
  const over = promised !== undefined && promised < now.slice(0, 10);
  const warnings = over
    ? [{ code: 'promised-over', say: `${sayDate(promised, now)} is over already.` }]
    : [];
  return mark(
    call,
    wish,
    () => `${key}: ${known}${when}.`,
    {},
    () => warnings,
  );
}

/** By its name on the list or as it is printed, or the only one of which either begins so. */
function meantBy(list: readonly Buy[], said: string): Buy | undefined {
  const word = said.trim().toLowerCase();
  const names = (b: Buy) => [b.buy, b.what.toLowerCase()];
  const exact = list.find((b) => b.buy === said) ?? list.find((b) => names(b).includes(word));
  if (exact || word === '') return exact;
  const begin = list.filter((b) => names(b).some((name) => name.startsWith(word)));
  return begin.length === 1 ? begin[0] : undefined;
}

function listed(call: Call, list: readonly Buy[], now: string): Answer {
  const raw = call.options.raw === true;
  // One line more would be an empty row.
  if (call.options.csv === true || raw) {
    return answer({ buy: list }, printCsv(buyRows(list), { raw }).trimEnd());
  }
  const lines = list.map((b) => {
    const parts = [
      b.says !== null && buyRow(b.state).noGood ? `${b.state}: ${b.says}` : b.state,
      b.promised === null ? null : `promised ${b.promised}${b.late ? ', late' : ''}`,
      b.tray === null ? null : `in ${b.tray}`,
      b.holds.length === 0 ? null : `holds ${b.holds.join(', ')}`,
      b.why ?? saidBack(b),
      ...sayBefore(b, now).map((text) => `before: ${text}`),
    ].filter((p) => p !== null);
    const price = [b.count, b.price, b.from].filter((p) => p !== null).join(', ');
    return `${b.buy}: ${b.what}${b.ask ? '?' : ''}${price === '' ? '' : ` (${price})`}: ${parts.join('; ')}`;
  });
  return answer({ buy: list }, lines.join('\n') || 'Nothing is to be had.');
}
