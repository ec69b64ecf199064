/** A list to start from: into the file, and out again as long as it stands there as it came. */
import { sumOf } from '../../../model/sum.ts';
import type { Entry, Job, Upper, Verdict } from '../../../model/types.ts';
import { TAKEN_WORD } from '../../fold/say-taken.ts';
import {
  already,
  list,
  type Stamp,
  type Undone,
  type UndoWay,
  type Wished,
  write,
} from '../base/verdict.ts';

type Section = 'suspects' | 'checks';
const SECTIONS: readonly Section[] = ['suspects', 'checks'];

/** What is in the file already stays as it is. The entry keeps what it brought, each with the sum of its fields. */
export function judgeStart(job: Job, wish: Wished<'start'>, stamp: Stamp): Verdict {
  const named = SECTIONS.flatMap((section) =>
    wish[section]
      .filter(({ key }) => !job.upper[section].has(key))
      .map((one) => ({ edit: 'named' as const, section, ...one })),
  );
  if (named.length === 0) return already();
  const made = SECTIONS.filter(
    (section) => job.upper[section].size === 0 && named.some((one) => one.section === section),
  );
  const was = [
    ...made.map((section) => `/${section}=${EMPTY}`),
    ...named.map(
      ({ section, key, fields }) => `/${section}/${key}=${sumOf(JSON.stringify(fields))}`,
    ),
  ];
  const entry = { verb: 'listed', value: wish.say, was: was.join(' ') } as const;
  return write(stamp, wish, entry, { edits: named });
}

/** Of a section that had to be made first. */
const EMPTY = sumOf(JSON.stringify(''));

interface Word {
  path: string[];
  sum: string;
}

function wordsOf({ was = '' }: Entry): Word[] {
  return was.split(' ').flatMap((word) => {
    const [, , path, sum] = TAKEN_WORD.exec(word) ?? [];
    return path === undefined || sum === undefined ? [] : [{ path: path.split('/'), sum }];
  });
}

/** Suspects and checks that came with it. Nothing, of an entry that is no list to start from. */
export function startedBy(entry: Entry): Record<Section, ReadonlySet<string>> {
  const of = (section: Section) =>
    new Set(wordsOf(entry).flatMap(({ path: [of, key] }) => (of === section && key ? [key] : [])));
  return { suspects: of('suspects'), checks: of('checks') };
}

/** What an undo of it does: it goes where nobody changed it, and nothing that stays names it. */
export function startBack(upper: Upper, entry: Entry, way: UndoWay): Undone {
  if (way === 'again') {
    const say =
      'What it listed went with the undo: to have it again, take the list over once more.';
    return { edits: [], warnings: [{ code: 'say-anew', say }] };
  }
  const words = wordsOf(entry);
  if (words.length === 0) {
    const say = 'What was listed stays in the file: take out by hand what is not wanted.';
    return { edits: [], warnings: [{ code: 'file-stays', say }] };
  }
  const own = startedBy(entry);
  const named = new Set([
    ...[...upper.checks.values()].flatMap(({ key, bad, along }) =>
      own.checks.has(key) ? [] : [...bad, ...along],
    ),
    ...[...upper.tasks.values()].flatMap(({ proves }) => proves),
  ]);
  const stays = words.flatMap(({ path: [, key] }) => (key && named.has(key) ? [key] : []));
  const say = `${list(stays)} ${stays.length === 1 ? 'stays' : 'stay'} in the file: something else there names ${stays.length === 1 ? 'it' : 'them'}.`;
  const pairs = words.filter(({ path: [, key] }) => !key || !named.has(key));
  return {
    edits: [{ edit: 'pairs-out', pairs }],
    warnings: stays.length === 0 ? [] : [{ code: 'file-stays', say }],
  };
}
