/**
 * Before the first bolt of a piece is turned: the machine made safe for it, at one glance. Only what applies to this
 * piece by its care, its name, its words and the tasks before it; nothing here stops. Common practice of the trade, no
 * source: the maker's manual, local rules and licensed mechanics go first.
 */

import { listed } from '../../job/truth/said.ts';
import { textsIn } from '../../model/said.ts';
import type { Care, PieceNow, PieceSpec } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { CARES, caresOf } from '../care/care.ts';
import { letOut } from '../care/fluids.ts';
import { spoken } from '../order/relations.ts';
import type { Standing } from '../order/standing.ts';
import type { ItemKey } from './item-rows.ts';
import { type AskedItem, ifAny, look, warn } from './items.ts';
import { cautions } from './piece.ts';

export function beforeLoosening(standing: Standing, piece: PieceNow): AskedItem[] {
  const { spec } = piece;
  const cares = caresOf(spec).care;
  const safe = cares.flatMap((care) => {
    const say = CARES[care].before;
    return say === null ? [] : [warn(care, say)];
  });
  const name = nameOf(spec);
  const more = MORE.filter(
    ({ unless, applies }) => !cares.some((care) => unless.includes(care)) && applies(spec, name),
  );
  const ready = [
    ...safe,
    ...(isMains(standing, piece) && !cares.includes('mains')
      ? [warn('mains', CARES.mains.before ?? '')]
      : []),
    ...more.map(({ key, say }) => warn(key, say)),
    ...weight(spec, name),
    ...tasksBefore(standing, spec),
  ];
  // With nothing to see to, there is no list, and cautions are read on the piece's own page.
  return ready.every((item) => item.done === true) ? ready : [...ready, ...toRead(spec, cares)];
}

/** What is to be read before it comes off stands on the same list: one glance, not two. */
function toRead(spec: PieceSpec, cares: readonly Care[]): AskedItem[] {
  return [
    ...ifAny(spec.marks, () => look('marks', ['Marked: ', ...listed(spec.marks), '.'])),
    ...ifAny(spec.routes, () =>
      look('routes', ['Seen how it runs: ', ...listed(spec.routes), '.']),
    ),
    ...cautions(spec, 'off').filter(
      ({ key }) => !SAID.includes(key) || cares.some((care) => care === key),
    ),
  ];
}

/** Cautions that the items above say already. */
const SAID: readonly string[] = ['spring', 'magnet', 'pressure', 'hot'];

function nameOf({ key, name }: PieceSpec): string {
  return `${key.replaceAll('-', ' ')} ; ${name}`.toLowerCase();
}

interface More {
  key: ItemKey;
  say: string;
  /** Cares that say the same already. */
  unless: readonly string[];
  applies(spec: PieceSpec, name: string): boolean;
}

/** Words for what only covers such a thing: taking a cover off undoes no lead. */
const COVER = /\b(?:covers?|caps?|lids?|guards?|brackets?|shields?)$/;
const byName = (names: RegExp) => (_: PieceSpec, name: string) =>
  names.test(name) && !name.split(' ; ').some((one) => COVER.test(one));
const byLoose = (thing: RegExp) => (spec: PieceSpec) =>
  spec.loose.some((said) => thing.test(said.text));

const MORE: readonly More[] = [
  {
    key: 'loose-spring',
    say: 'A spring is behind it: known which way it pushes, eyes covered, something to hold it with.',
    unless: ['spring'],
    applies: byLoose(/\bsprings?\b/i),
  },
  {
    key: 'loose-magnet',
    say: 'A magnet pulls it: known where, no finger and no filings between the edges.',
    unless: [],
    applies: byLoose(/\bmagnets?\b/i),
  },
  {
    key: 'pressure',
    say: 'Cold, and without pressure: it was not run for some hours.',
    unless: ['head'],
    applies: (_, name) =>
      /\b(?:pressure|radiator|expansion(?: tank)?|header(?: tank)?) caps?\b/.test(name),
  },
  {
    key: 'cold',
    say: 'Cold, or gloves on: it stays hot long after a run.',
    unless: ['head'],
    applies: byName(
      /\b(?:exhausts?|silencers?|mufflers?|manifolds?|downpipes?|turbos?|turbochargers?)\b/,
    ),
  },
  {
    key: 'lead',
    say: 'Battery lead off, the minus first.',
    unless: ['battery', 'fuel', 'airbag', 'blade'],
    applies: byName(
      /\b(?:alternators?|generators?|dynamos?|ignition|coils?|regulators?|rectifiers?|looms?|harness(?:es)?|fuse ?box(?:es)?|solenoids?|wiring)\b/,
    ),
  },
  {
    key: 'plug-lead',
    say: 'Plug lead off and held away: it cannot fire while it is turned.',
    unless: ['blade'],
    applies: byName(/\b(?:fly ?wheels?|magnetos?|recoil(?: starters?)?|impellers?|propellers?)\b/),
  },
];

/** So many kilograms are held by two hands, and no more. */
const BY_HAND = 10;
const HEAVY =
  /\b(?:engines?|motors?|gear ?box(?:es)?|transmissions?|head ?stocks?|tail ?stocks?|chucks?|fly ?wheels?|crank ?shafts?|differentials?|cylinder blocks?)$/;
/** `30 lb·ft` and `2 kg/cm²` are no weight. */
const WEIGHT =
  /(\d+(?:[.,]\d+)?)\s*(kg|lbs?)\b(?!\.?\s*[·⋅*./-]?\s*(?:ft|foot|feet|in|inch(?:es)?|m|cm|f)\b)/i;

/** What it weighs, where the file says it or its name does; covers and mounts of such pieces are none. */
function weight(spec: PieceSpec, name: string): AskedItem[] {
  const texts = [
    ...textsIn([
      ...spec.loose,
      ...spec.caution.removal,
      ...(spec.note === null ? [] : [spec.note]),
    ]),
  ];
  const said = texts.flatMap((text) => WEIGHT.exec(text) ?? []);
  const [figure, value, unit] = said;
  const kg = Number(value?.replace(',', '.')) * (/^lb/i.test(unit ?? '') ? 0.4536 : 1);
  const heavy = kg >= BY_HAND || texts.some((text) => /\bheavy\b/i.test(text));
  if (!heavy && !name.split(' ; ').some((one) => HEAVY.test(one))) return [];
  const how = figure === undefined ? 'It is heavy' : `It weighs ${figure}`;
  return [warn('weight', `${how}: known who or what holds it when the last bolt is out.`)];
}

const MACHINES =
  /\b(?:lathes?|mill(?:s|ing machines?)?|(?:pillar|bench) drills?|drill(?:ing)? press(?:es)?|(?:bench |surface )?grinders?|band ?saws?|table saws?|planers?|compressors?|washing machines?|dishwashers?|cookers?|ovens?|fridges?|freezers?|welders?)\b/i;
/** Driven by an engine of its own. */
const ENGINE =
  /\b(?:petrol|gasoline|diesel|engine|battery|cordless|two[- ]stroke|four[- ]stroke)\b/i;

/** A machine on the mains, by its name, of which nothing else is off yet: once it is locked it stays so. */
function isMains({ job }: Standing, piece: PieceNow): boolean {
  const machine = job.upper.machine ?? '';
  if (!MACHINES.test(machine) || ENGINE.test(machine)) return false;
  return [...job.pieces.values()].every((p) => p === piece || p.where === 'home');
}

/** What the file wants done before it comes off, and whether what ran out of it is out. */
function tasksBefore({ job, finished, relations }: Standing, { key }: PieceSpec): AskedItem[] {
  const before = [...job.tasks.values()].filter((task) =>
    task.spec.before.some((step) => spoken(step) === `${key} off`),
  );
  return before.map(({ spec: task }) => {
    const done = finished.done[relations.at.get(task.key) ?? -1] === true;
    const out = done ? letOut(task.say.text) : null;
    const isOut = out === null ? '.' : ` (${list([out])} is out).`;
    const words = done ? ['Done: ', task.say, isOut] : ['Still to do: ', task.say];
    return { ...look(`task-${task.key}`, words), done };
  });
}
