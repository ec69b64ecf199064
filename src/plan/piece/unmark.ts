/** The wrong hole was marked: what is to be taken back of one hole, and what of it stands again for the others. */
import type { Entry, Job, Moment, PieceNow, Verb, Wish } from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';
import { readItem, STILL_IN } from '../../piece/row.ts';

/** Marks of bolts, which can be meant for another hole. */
function isOfHole(verb: Verb): boolean {
  const { kind, about } = verbRow(verb);
  return kind === 'piece' && about.some((places) => places.some((place) => /^hole/.test(place)));
}

/** What stands by itself, whatever else is taken back; another letter holds for all bolts of its kind. */
const isAlone = (verb: Verb) => verbRow(verb).standsAlone || verb === 'renamed';

function holesOf({ spec: _, holes }: PieceNow, entry: Entry): string[] {
  return entry.hole ?? holes.map((h) => h.name);
}

/** The word of a row that an entry says of this hole. */
function wordOf(piece: PieceNow, entry: Entry, hole: string): string {
  const words = entry.value.split(' ');
  return (words.length === 1 ? words[0] : words[holesOf(piece, entry).indexOf(hole)]) ?? '';
}

function isAbout(piece: PieceNow, entry: Entry, hole: string): boolean {
  if (!isOfHole(entry.verb) || !holesOf(piece, entry).includes(hole)) return false;
  return entry.verb !== 'out' || wordOf(piece, entry, hole) !== STILL_IN;
}

/** Marks of this round on the hole, the last one first. */
export function marksOn(job: Job, piece: PieceNow, hole: string): Entry[] {
  return job.entries
    .filter(
      (e) =>
        e.piece === piece.spec.key &&
        job.living.has(e.id) &&
        job.rounds.get(e.id) === piece.round &&
        isAbout(piece, e, hole),
    )
    .reverse();
}

export interface Unmark {
  /** What is taken back, the first one first. */
  gone: Entry[];
  /** What stands again, for the other holes. */
  again: { entry: Entry; holes: string[] }[];
  /** Carried out in this order. */
  wishes: Wish[];
}

/** Takes the mark back for this hole alone, with all that rests on it. */
export function unmark(job: Job, piece: PieceNow, hole: string, target: Entry): Unmark {
  const gone = restingOn(job, target);
  const off = target.verb === 'out';
  const again = gone.flatMap((entry) => {
    const rest = holesOf(piece, entry).filter((h) => h !== hole);
    if (isOfHole(entry.verb)) {
      const real = rest.filter((h) => isAbout(piece, entry, h));
      return real.length === 0 ? [] : [{ entry, holes: real }];
    }
    // If the bolt of this hole never came out, the piece did not come off either.
    return off && (entry.verb === 'removed' || entry.verb === 'fitted')
      ? []
      : [{ entry, holes: [] }];
  });
  const undo = gone.toReversed().map((e): Wish => ({ do: 'undo', id: e.id }));
  return { gone, again, wishes: [...undo, ...again.flatMap((a) => wishesOf(piece, a))] };
}

/** The mark and everything later on the piece that would not stand without it. */
function restingOn(job: Job, target: Entry): Entry[] {
  const found = [target];
  for (const later of job.entries.slice(job.entries.indexOf(target) + 1)) {
    if (!job.living.has(later.id) || later.piece !== target.piece || isAlone(later.verb)) continue;
    const rests = found.some((on) => {
      if (on.verb === 'state' && later.hole === undefined) return false;
      return !later.hole || !on.hole || later.hole.some((h) => on.hole?.includes(h));
    });
    if (rests) found.push(later);
  }
  return found;
}

/** A mark that is made once more: what stands in its entry, and for which holes. */
interface Again {
  piece: PieceNow;
  entry: Entry;
  holes: string[];
  /** What each of its wishes says beside what it does. */
  of: { piece: string; says?: string; because?: string };
}

type AgainAs = (again: Again) => Wish[];

/** `sealing faces`: the moment, and the name of an item. */
const atGate: AgainAs = ({ entry, of }) => {
  const [moment = '', ...item] = entry.value.split(' ');
  const how = entry.verb === 'seen' ? 'seen' : 'struck';
  return [{ do: 'gate', ...of, moment: moment as Moment, how, item: item.join(' ') }];
};

/** The wishes that make a mark again; null for verbs that rest on no bolt of a piece, or stand alone. */
const AGAIN: Readonly<Record<Verb, AgainAs | null>> = {
  out: ({ piece, entry, holes, of }) => {
    const row = holes.map((h) => wordOf(piece, entry, h)).join(' ');
    return [{ do: 'out', ...of, holes, row, ...liesIn(entry) }];
  },
  in: ({ piece, entry, holes, of }) =>
    [...Map.groupBy(holes, (h) => wordOf(piece, entry, h))].flatMap(([word, same]): Wish[] => {
      const item = readItem(word);
      return item ? [{ do: 'in', ...of, holes: same, hand: item }] : [];
    }),
  tight: ({ entry: { value, set }, holes, of }) => {
    const at = set === undefined ? {} : { set };
    // In another order than the maker's it was let through before.
    const because = of.because ?? 'marked again without one hole';
    return [{ do: 'tight', ...of, holes, pass: value, ...at, because }];
  },
  state: ({ entry, holes, of }) => {
    const state = entry.value as Extract<Wish, { do: 'state' }>['state'];
    return holes.map((hole): Wish => ({ do: 'state', ...of, hole, state }));
  },
  settle: ({ entry, holes, of }) =>
    holes.map((hole): Wish => ({ do: 'settle', ...of, hole, kind: entry.value })),
  removed: ({ entry, of }) => [
    { do: entry.value === 'aside' ? 'aside' : 'off', ...of, ...liesIn(entry) },
  ],
  fitted: ({ of }) => [{ do: 'on', ...of }],
  inside: ({ entry, of }) => [{ do: 'inside', ...of, what: entry.value }],
  cleared: ({ entry, of }) => [{ do: 'cleared', ...of, what: entry.value }],
  seen: atGate,
  struck: atGate,
  added: ({ entry, of }) => [
    { do: 'gate', ...of, moment: entry.value as Moment, how: 'added', item: entry.says ?? '' },
  ],
  done: null,
  written: null,
  renamed: null,
  corrected: null,
  note: null,
  photo: null,
  keep: null,
  taken: null,
  reading: null,
  undo: null,
  looked: null,
  tried: null,
  listed: null,
  chosen: null,
  figured: null,
  found: null,
};

function liesIn({ tray }: Entry): { tray?: string } {
  return tray === undefined ? {} : { tray };
}

/** The same mark once more, for these holes. */
function wishesOf(piece: PieceNow, { entry, holes }: Unmark['again'][number]): Wish[] {
  const { verb, says, because } = entry;
  const of = {
    piece: piece.spec.key,
    ...(says === undefined ? {} : { says }),
    ...(because === undefined ? {} : { because }),
  };
  return AGAIN[verb]?.({ piece, entry, holes, of }) ?? [];
}
