/** What is known of a piece or a task, in words. */
import type { Figure } from '../../job/truth/corrections.ts';
import { labelOf } from '../../model/keys/known-keys.ts';
import type { Correction, Job } from '../../model/types.ts';

/** `Torque`, `7: note`, `Caution, on`. */
export function figureLabel({ what, hole, way }: Pick<Figure, 'what' | 'hole' | 'way'>): string {
  if (hole !== undefined) return `${hole}: ${labelOf(what).toLowerCase()}`;
  const which = way === undefined ? '' : way === 'removal' ? ', off' : ', on';
  return `${labelOf(what)}${which}`;
}

/** `Alternator cover, 7, note`, `Chain slack, limit`; a step that says itself goes by its key: `slack, step`. */
export function subjectSaid(job: Job, of: Pick<Correction, 'piece' | 'hole' | 'task' | 'what'>) {
  const name =
    of.task === undefined
      ? (job.pieces.get(of.piece ?? '')?.spec.name ?? of.piece ?? '')
      : of.what === 'step'
        ? of.task
        : (job.tasks.get(of.task)?.spec.say.text ?? of.task);
  const parts = [name, of.hole, labelOf(of.what).toLowerCase()];
  return parts.filter((p) => p !== undefined).join(', ');
}
