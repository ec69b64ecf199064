/** What is said after a mark, on whichever screen it was made. */
import { sayEntryOf } from '../../job/fold/say-entry.ts';
import type { Entry, Job } from '../../model/types.ts';
import { sentence } from '../../model/words.ts';
import { buyList } from '../../plan/buy/list.ts';
import { sayBought } from '../../plan/buy/say.ts';
import { sayThing } from '../../plan/order/inside.ts';
import { capital, list } from '../kit/words.ts';
import { say, stay } from './moves.ts';
import type { After } from './screen.ts';
import type { State } from './state.ts';
import { takenBack, undone } from './undo.ts';

/** Where each answer landed. */
const CHOSEN = {
  look: 'to look at, among the tasks',
  renew: 'to renew, among the tasks and on the list',
  leave: 'left, and noted',
  ask: 'to be asked, among the tasks',
} as const;

export const NOTED = {
  undo: (state, { wish }) => {
    const entry = undone(state, wish);
    return entry ? takenBack(state, entry) : stay(state);
  },
  note: (state, { entry }) => (entry ? say(state, 'Noted.') : stay(state)),
  add: (state, { entry }) =>
    say(state, entry && state.open ? addedSaid(state.open.job, entry) : 'It is there already.'),
  rename: (state, { wish, entry }) =>
    say(state, `${entry?.was ?? wish.kind} is ${entry?.value ?? wish.to} now, everywhere.`),
  write: (state) => say(state, 'Noted.'),
  correct: (state) => say(state, 'Noted.'),
  look: (state) => say(state, 'Noted.'),
  try: (state, { wish }) => say(state, `${capital(wish.put)} is in, to try.`),
  tried: (state) => say(state, 'Noted.'),
  list: (state, { wish: { fields } }) => {
    const said = fields.what ?? fields.check ?? '';
    return say(state, sentence(`${fields.what ? 'It may be' : 'To look at'}: ${said}`));
  },
  start: (state, { wish }) => say(state, `Taken over: ${wish.say}.`),
  found: (state) => say(state, 'Noted.'),
  choose: (state, { wish }) => say(state, `${wish.what}: ${CHOSEN[wish.answer]}.`),
  figures: (state) => say(state, 'Noted.'),
  done: (state) => say(state, 'Noted.'),
  buy: (state, { wish }) => say(state, boughtSaid(state, wish.buy)),
  inside: (state, { wish }) => say(state, `${capital(wish.what)} inside.`),
  cleared: (state) =>
    say(state, (state.open && insideSaid(state.open.job)) ?? 'Nothing is inside any more.'),
} satisfies After;

/** `Alternator cover: to buy: 6204 bearing.` */
function addedSaid(job: Job, entry: Entry): string {
  return sentence(capital(sayEntryOf(entry, job)));
}

/** `Cover gasket: ordered, for 25 April.`: how far it has come now. */
function boughtSaid({ open, now }: State, buy: string): string {
  const found = open ? buyList(open.job, now).find((b) => b.buy === buy) : undefined;
  return found ? `${found.what}: ${sayBought(found, now)}.` : 'Noted.';
}

/** `Inside: 2 rags (Case cover).`; null when nothing is inside. */
export function insideSaid(job: Job): string | null {
  if (job.inside.length === 0) return null;
  const each = job.inside.map((i) => {
    const name = i.piece === null ? '' : ` (${job.pieces.get(i.piece)?.spec.name ?? i.piece})`;
    return `${sayThing(i)}${name}`;
  });
  return `Inside: ${list(each)}.`;
}
