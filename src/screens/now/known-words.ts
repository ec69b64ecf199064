/** What is known of a piece or a task, in words: the name of each thing, and what it is for where it is not said yet. */
import type { Figure } from '../../job/truth/corrections.ts';
import type { Correctable, Correction, Job, Writable } from '../../model/types.ts';

export type Known = Correctable | Writable | 'tray' | 'first' | 'wet' | 'group';

const LABELS: Readonly<Record<Known, string>> = {
  bolts: 'Bolts',
  torque: 'Torque',
  passes: 'Pass',
  sequence: 'Order',
  thick: 'Thick',
  thread: 'Thread',
  turns: 'Turns',
  proud: 'Proud',
  into: 'Into',
  caution: 'Caution',
  tip: 'Tip',
  joint: 'Joint',
  loose: 'Loose',
  marks: 'Marks',
  routes: 'Runs',
  note: 'Note',
  step: 'Step',
  limit: 'Limit',
  when: 'When',
  takes: 'Takes',
  under: 'Under',
  along: 'Comes with',
  bridges: 'Bridges',
  map: 'Picture',
  tray: 'Tray',
  first: 'First',
  wet: 'Wet',
  group: 'Group',
};

/** What may be said of a piece and is not yet, each with what it is for, in the order in which it is offered. */
export const OFFERED: readonly (readonly [Writable, string])[] = [
  ['under', 'what has to come off before it'],
  ['along', 'the piece it comes off with, without a step of its own'],
  ['bridges', 'the pieces it runs between: it comes off before any of them'],
  ['routes', 'how a hose, a wire or a cable runs'],
  ['marks', 'what is marked, to line it up again'],
  ['loose', 'what falls out or must stay in'],
  ['joint', 'gasket, sealant and where not, dowels, which way the lip'],
  ['torque', 'as printed, and where'],
  ['sequence', "the maker's order of tightening, hole by hole"],
  ['into', 'what its bolts go into'],
  ['takes', 'how long it takes by hand'],
  ['bolts', 'how many bolts it has, or which'],
];

/** Of these a piece can have several. */
export const SEVERAL: readonly Writable[] = [
  'under',
  'along',
  'bridges',
  'routes',
  'marks',
  'loose',
  'joint',
];

/** Keys whose texts are names of pieces. */
export const NAMES_PIECES: readonly Writable[] = ['under', 'along', 'bridges'];

export function labelOf(what: Known): string {
  return LABELS[what];
}

/** `Torque`, `7: note`, `Caution, on`. */
export function figureLabel({ what, hole, way }: Pick<Figure, 'what' | 'hole' | 'way'>): string {
  if (hole !== undefined) return `${hole}: ${labelOf(what).toLowerCase()}`;
  const which = way === undefined ? '' : way === 'removal' ? ', off' : ', on';
  return `${labelOf(what)}${which}`;
}

/** `Alternator cover, 7, note`, `Chain slack, limit`. */
export function subjectSaid(job: Job, of: Pick<Correction, 'piece' | 'hole' | 'task' | 'what'>) {
  const name =
    of.task === undefined
      ? (job.pieces.get(of.piece ?? '')?.spec.name ?? of.piece ?? '')
      : (job.tasks.get(of.task)?.spec.say ?? of.task);
  const parts = [name, of.hole, labelOf(of.what).toLowerCase()];
  return parts.filter((p) => p !== undefined).join(', ');
}
