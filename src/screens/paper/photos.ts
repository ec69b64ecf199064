/** Photographs of a piece, as it was: each with when it was taken, opened one by one by the desktop. */
import { livingEntries } from '../../job/diary/living.ts';
import { secondsOf } from '../../model/time.ts';
import type { Entry, Job } from '../../model/types.ts';
import { list, many } from '../../model/words.ts';
import { sayTime } from '../../plan/time/days.ts';
import type { Key } from '../base/key.ts';
import { type OnJob, onJob, pieceNamed, show, stay } from '../base/moves.ts';
import { listLines, type Page } from '../base/page.ts';
import { screenOver } from '../base/screen.ts';
import type { State, Updated, View } from '../base/state.ts';
import { bold, line, span, wrap } from '../kit/text.ts';

type PhotosView = Extract<View, { screen: 'photos' }>;

/** Those of a piece, in the order in which they were taken. */
export function photosOf(job: Job, piece: string): Entry[] {
  const taken = (e: Entry) => secondsOf(e.shot ?? e.at);
  return livingEntries(job.entries)
    .filter((e) => e.verb === 'photo' && e.piece === piece)
    .sort((a, b) => taken(a) - taken(b));
}

interface OnPhotos extends OnJob<PhotosView> {
  photos: readonly Entry[];
  marked: Entry | null;
}

function onPhotos(state: State, view: PhotosView): OnPhotos | null {
  const here = onJob(state, view);
  if (!here) return null;
  const photos = photosOf(here.job, view.piece);
  return { ...here, photos, marked: photos.find((p) => p.id === view.here) ?? photos[0] ?? null };
}

/** Leads here from the steps of a piece that has any. */
export const asItWasKey: Key<{ state: State; job: Job; key: string }> = {
  id: 'as-it-was',
  // A letter that is a kind of this job is in the hand first.
  presses: ['x', '\\'],
  label: 'as it was',
  help: 'the photographs of this piece, opened one by one',
  holds: ({ job, key }) =>
    job.entries.some((e) => e.verb === 'photo') && photosOf(job, key).length > 0,
  does: ({ state, key }) =>
    show(state, { screen: 'photos', piece: key, here: null, under: state.view }),
};

/** Opens the marked one, and marks the next. */
function open({ state, view, photos, marked }: OnPhotos): Updated {
  if (marked === null || !state.open) return stay(state);
  const next = photos[photos.indexOf(marked) + 1] ?? marked;
  return {
    state: { ...state, view: { ...view, here: next.id } },
    effects: [{ do: 'show', file: state.open.file, picture: marked.value }],
  };
}

export const photosScreen = screenOver({
  here: onPhotos,
  keys: [
    {
      id: 'open-photo',
      presses: ['enter'],
      label: 'open',
      help: 'open the marked photograph, and mark the next',
      holds: ({ marked }) => marked !== null,
      does: open,
    },
  ],
  draw: drawPhotos,
  rows: ({ view, photos, marked }) => ({
    names: photos.map((p) => p.id),
    marked: marked?.id ?? null,
    mark: (here) => ({ ...view, here }),
  }),
});

function drawPhotos({ state, view, job, photos, marked }: OnPhotos): Page {
  const around = {
    left: line(bold(`${pieceNamed(job, view.piece).spec.name}, as it was`)),
    right: line(many(photos.length, 'photograph')),
    under: line(job.upper.job),
  };
  return {
    kind: 'list',
    ...around,
    middle: (columns) =>
      photos.flatMap((photo, i) => {
        const here = photo === marked;
        const said = [
          sayTime(photo.shot ?? photo.at, state.now),
          photo.hole ? `hole ${list(photo.hole)}` : null,
          photo.value.split('/').at(-1) ?? photo.value,
          photo.says ?? null,
        ].filter((text) => text !== null);
        const lines = wrap(said.join('  '), Math.max(10, columns - 2), here ? { bold: true } : {});
        return listLines(
          lines.map((l, k) => [span(here && k === 0 ? '> ' : '  ', { bold: true }), ...l]),
          i,
          here,
        );
      }),
  };
}
