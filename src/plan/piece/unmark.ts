/** The wrong hole was marked: what is to be taken back of one hole, and what of it stands again for the others. */
import type { Entry, Job, Moment, PieceNow, Verb, Wish } from '../../model/types.ts';
import { verbRow } from '../../model/verbs.ts';
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
    // With its bolt in, the piece did not come off.
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

/** The same mark once more, for these holes. */
function wishesOf(piece: PieceNow, { entry, holes }: Unmark['again'][number]): Wish[] {
  const { spec } = piece;
  const { value, says, because, tray, set } = entry;
  const beside = {
    ...(says === undefined ? {} : { says }),
    ...(because === undefined ? {} : { because }),
  };
  const of = { piece: spec.key, ...beside };
  const lies = tray === undefined ? {} : { tray };
  switch (entry.verb) {
    case 'out': {
      const row = holes.map((h) => wordOf(piece, entry, h)).join(' ');
      return [{ do: 'out', ...of, holes, row, ...lies }];
    }
    case 'in':
      return [...Map.groupBy(holes, (h) => wordOf(piece, entry, h))].flatMap(
        ([word, same]): Wish[] => {
          const item = readItem(word);
          return item ? [{ do: 'in', ...of, holes: same, hand: item }] : [];
        },
      );
    case 'tight': {
      // In another order than the maker's it was let through before.
      const why = because ?? 'marked again without one hole';
      const at = set === undefined ? {} : { set };
      return [{ do: 'tight', ...of, holes, pass: value, ...at, because: why }];
    }
    case 'state': {
      const state = value as Extract<Wish, { do: 'state' }>['state'];
      return holes.map((hole): Wish => ({ do: 'state', ...of, hole, state }));
    }
    case 'settle':
      return holes.map((hole): Wish => ({ do: 'settle', ...of, hole, kind: value }));
    case 'removed':
      return [{ do: value === 'aside' ? 'aside' : 'off', ...of, ...lies }];
    case 'fitted':
      return [{ do: 'on', ...of }];
    case 'inside':
    case 'cleared':
      return [{ do: entry.verb, ...of, what: value }];
    case 'seen':
    case 'struck': {
      const [moment = '', ...item] = value.split(' ');
      const gate = { moment: moment as Moment, how: entry.verb, item: item.join(' ') };
      return [{ do: 'gate', ...of, ...gate }];
    }
    case 'added':
      return [{ do: 'gate', ...of, moment: value as Moment, how: 'added', item: says ?? '' }];
    default:
      return [];
  }
}
