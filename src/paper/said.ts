/** Words that several papers share. */

import { printQuantity } from '../bolt/read/units.ts';
import { settings, type Wrench } from '../bolt/torque/wrench.ts';
import { unreadSaid } from '../job/fold/unread.ts';
import { inWords } from '../job/truth/said.ts';
import type {
  Correction,
  HoleNow,
  Job,
  Kind,
  PieceNow,
  Quantity,
  RowItem,
  TextSaid,
} from '../model/types.ts';
import { printItem } from '../piece/row.ts';
import { cautionsSaid } from '../plan/care/cautions.ts';
import { type Markup, m, t } from './markup.ts';

/** `S: M6x25 flange, 8 mm`; the letter alone of a kind that the file does not describe. */
export function kindSaid(kinds: ReadonlyMap<string, Kind>, letter: string): string {
  const kind = kinds.get(letter);
  return kind && kind.text !== '' ? `${letter}: ${kind.text}` : `${letter}: not described`;
}

/** `S`, `M + clip`; two with `or` where file and find differ and nobody said which is true; null: nobody said. */
export function belongsSaid(hole: HoleNow): string | null {
  if (hole.unsettled && hole.claim && hole.found) {
    return `${printItem(hole.claim)} or ${printItem(hole.found)}?`;
  }
  return hole.belongs ? printItem(hole.belongs) : null;
}

/** How many of each kind with what lies under it, the most first: `8 × S`, `1 × M+clip`. */
export function counted(
  items: readonly RowItem[],
): { count: number; said: string; kind: string }[] {
  const all = new Map<string, { count: number; said: string; kind: string }>();
  for (const item of items) {
    const said = printItem(item);
    const known = all.get(said) ?? { count: 0, said, kind: item.kind };
    all.set(said, { ...known, count: known.count + 1 });
  }
  return [...all.values()].sort((a, b) => b.count - a.count);
}

/** Texts of the file, each with how it is printed where that is not so. */
export function texts(said: readonly TextSaid[]): string[] {
  return said.map((text) => inWords([text]));
}

/** The torque of a piece as it counts, with its page and how it is printed; null where none is known. */
export function torqueSaid({ spec }: PieceNow): string | null {
  return spec.torque && inWords([spec.torque]);
}

/** The torque of each hole that has one of its own, by its name. */
export function ownTorques({ spec }: PieceNow): { hole: string; said: TextSaid }[] {
  return [...spec.holes.values()].flatMap(({ name, torque }) => {
    return torque === null ? [] : [{ hole: name, said: torque }];
  });
}

/** What can hurt somebody as the piece goes on, each with how it is printed where that is not so. */
export function cautionsOn({ spec }: PieceNow): string[] {
  return cautionsSaid(spec, 'on').map(({ said }) => inWords([said]));
}

/** `set 10 on the small wrench`, on each that reaches; empty on a bench without wrenches. */
export function wrenchesSaid(wrenches: readonly Wrench[], torque: Quantity | null): string[] {
  if (torque === null) return [];
  return settings(wrenches, torque)
    .filter((s) => s.reach === 'ok')
    .map((s) => s.say);
}

/** `10 N·m`, `90°`; empty for neither. */
export function stageSaid(torque: Quantity | null, angle: number | null): string {
  return [torque ? printQuantity(torque) : '', angle === null ? '' : `${angle}°`]
    .filter((s) => s !== '')
    .join(' ');
}

export function dayOf(time: string): string {
  return time.slice(0, 10);
}

/** What a correction is of: `Alternator cover, hole 4`, or a task. */
export function ofWhat(job: Job, { piece, task, hole }: Correction): string {
  const of = task ?? job.pieces.get(piece ?? '')?.spec.name ?? piece ?? '';
  return hole === undefined ? of : `${of}, hole ${hole}`;
}

/** That lines of the file do not count: on each page that somebody works or judges by. */
export function unreadOn(job: Job): Markup | null {
  const say = unreadSaid(job);
  return say === null ? null : m`<p class="loud">${t(say)}</p>`;
}
