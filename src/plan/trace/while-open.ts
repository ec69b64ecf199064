/**
 * What is within reach while a piece is off, and costs the whole way again later: what is used once, seals, bearings and
 * what wears. From the file: its list, its questions, its words of the piece and of what lies behind it; and from what earlier
 * jobs on the machine tell of the piece, where they are known.
 */

import { freeKey } from '../../job/form/trace-keys.ts';
import { textsIn } from '../../model/said.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { capital } from '../../model/words.ts';
import { buyList } from '../buy/list.ts';
import { WEAR } from './wear.ts';

export type Chosen = 'look' | 'renew' | 'leave' | 'ask';

export interface WithinReach {
  /** As its row is named: the same for the same thing. */
  name: string;
  what: string;
  /** Where it comes from: `on the list`, `behind it`, `its joint`. */
  from: string;
  /** What to look for; empty where nothing is known of its sort. */
  look: string;
  /** A question that the file asks already: it opens on that. */
  task: string | null;
  /** What was said of it in this round; null while nothing was. */
  chosen: Chosen | null;
}

/** What an earlier job tells of the piece, and where it does. */
interface Told {
  text: string;
  /** `Left cover weeps oil, 3 November 2025`. */
  from: string;
}

/** In that order: questions, things used once, what lies behind, what the words of the piece name. Each thing once. */
export function whileOpen(
  job: Job,
  key: string,
  now: string,
  earlier: readonly Told[] = [],
): WithinReach[] {
  const piece = job.pieces.get(key);
  if (!piece || piece.away === 'no') return [];
  const found = [
    ...questions(job, key),
    ...usedOnce(job, key, now),
    ...behind(job, key),
    ...named(piece),
    ...earlier.flatMap(({ text, from }) => wearIn(text, from)),
  ];
  const said = chosenOf(job, piece);
  const items = new Map<string, WithinReach>();
  for (const { what, from, task = null } of found) {
    const name = freeKey(what, new Map());
    // `Gasket` of the joint is the cover gasket of the list.
    const known = [...items.values()].some((item) => isIn(what, item.what));
    if (items.has(name) || known) continue;
    const look = WEAR.find(({ names }) => names.test(what))?.look ?? '';
    items.set(name, {
      name,
      what: capital(what),
      from,
      look,
      task,
      chosen: said.get(name) ?? null,
    });
  }
  return [...items.values()];
}

const isIn = (what: string, other: string): boolean =>
  other.toLowerCase().includes(what.toLowerCase());

interface Found {
  what: string;
  from: string;
  task?: string;
}

const spoken = (step: string): string => step.trim().replace(/\s+/g, ' ');

function questions(job: Job, key: string): Found[] {
  return [...job.tasks.values()]
    .filter(({ spec, done }) => spec.verb === 'decide' && done === null)
    .filter(({ spec }) =>
      [...spec.while, ...spec.after].some((step) => spoken(step) === `${key} off`),
    )
    .map(({ spec }) => ({ what: spec.say.text, from: 'a question of the file', task: spec.key }));
}

function usedOnce(job: Job, key: string, now: string): Found[] {
  return buyList(job, now)
    .filter(
      ({ once, for: steps }) =>
        once && steps.some((step) => [key, `${key} on`].includes(spoken(step))),
    )
    .map(({ what, state }) => ({ what, from: `used once; on the list: ${state}` }));
}

/** Pieces that lie right behind it and wear; what is off already is in the hand anyway. */
function behind(job: Job, key: string): Found[] {
  return [...job.pieces.values()]
    .filter(({ spec }) => spec.under.includes(key))
    .filter(({ spec }) => WEAR.some(({ names }) => names.test(spec.name)))
    .map(({ spec }) => ({ what: spec.name, from: 'behind it' }));
}

/** What the words of the piece name: `lip seal inwards` → `Lip seal`. */
function named({ spec }: PieceNow): Found[] {
  const texts: [string, readonly string[]][] = [
    ['its joint', textsIn(spec.joint)],
    ['what is loose in it', textsIn(spec.loose)],
    ['its note', spec.note === null ? [] : [spec.note.text]],
    ['its holes', [...spec.holes.values()].flatMap(({ note }) => note?.text ?? [])],
  ];
  return texts.flatMap(([from, said]) => said.flatMap((text) => wearIn(text, from)));
}

/** What wears, as a text names it: `lip seal inwards` says `lip seal`. */
function wearIn(text: string, from: string): Found[] {
  return WEAR.flatMap(({ words }) =>
    [...text.matchAll(words)].map(([match]) => {
      const what = match.replace(/^(?:new|old|the|an?|its|dry|each|\d+)\s+/i, '');
      return { what, from };
    }),
  );
}

const ANSWER = /^(look|renew|leave|ask) (.*)$/;

/** By the names of the things, the last answer of the piece's round. */
function chosenOf(job: Job, { spec, round }: PieceNow): Map<string, Chosen> {
  const said = new Map<string, Chosen>();
  for (const { piece, verb, value, id } of job.entries) {
    if (verb !== 'chosen' || piece !== spec.key || !job.living.has(id)) continue;
    if ((job.rounds.get(id) ?? 1) !== round) continue;
    const [, answer, what = ''] = ANSWER.exec(value) ?? [];
    if (answer !== undefined) said.set(freeKey(what, new Map()), answer as Chosen);
  }
  return said;
}
