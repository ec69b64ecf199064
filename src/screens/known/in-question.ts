/** What "not so here" is about, where one stands: the texts of the file that are in sight. */

import { litHole } from '../base/lit.ts';
import { at, hereOf } from '../base/moves.ts';
import type { State, Step } from '../base/state.ts';
import { markedItem } from '../gate/gate.ts';
import { behindItem } from '../now/gate-figures.ts';
import type { Of } from '../now/known-rows.ts';
import { type KnownRow, knownRows } from '../now/known-rows.ts';
import { passFor } from '../now/pass-of.ts';
import { passNow } from '../now/piece-now.ts';
import { torqueRows } from '../now/tight-figures.ts';
import { markedTest } from '../tasks/tests-list.ts';

export interface InQuestion {
  of: Of;
  /** The likely one first; empty where nothing of it is printed. */
  rows: readonly KnownRow[];
}

export function inQuestion(state: State): InQuestion | null {
  const { view, open } = state;
  if (!open) return null;
  const { job } = open;
  switch (view.screen) {
    case 'task':
      return ofTask(state, view.task);
    case 'tests':
      return ofTask(state, markedTest(state) ?? '');
    case 'gate':
      return behindItem(job, view.moment, view.piece, markedItem(state) ?? '');
    case 'known': {
      const rows = knownRows(job, view.of);
      return { of: view.of, rows: rows.filter((r) => r.id === view.here && r.figure !== null) };
    }
    case 'piece':
      return ofPiece(state, view.step);
    default:
      return null;
  }
}

/** What somebody most likely reads in a task as wrong. */
const LIKELY = ['limit', 'step', 'when', 'takes', 'note'];

function ofTask({ open }: State, task: string): InQuestion | null {
  if (!open?.job.tasks.has(task)) return null;
  const of = { task };
  const rank = (r: KnownRow) => LIKELY.indexOf(r.figure?.what ?? '');
  const rows = knownRows(open.job, of).toSorted((a, b) => rank(a) - rank(b));
  return { of, rows };
}

function ofPiece(state: State, step: Step): InQuestion | null {
  const here = at(state);
  if (!here?.job.pieces.has(here.key)) return null;
  const { job, piece, key } = here;
  const of = { piece: key };
  const figures = knownRows(job, of).filter((r) => r.figure !== null);
  switch (step.step) {
    case 'read':
      return { of, rows: readHere(figures, step.way) };
    case 'tight': {
      const { kinds } = job.upper;
      const lit = litHole(here);
      const now = passNow(piece, kinds);
      const pass = now === null ? null : passFor(piece, kinds, now.pass, lit);
      return { of, rows: torqueRows(job, piece, pass, lit) };
    }
    case 'look': {
      const hole = hereOf(step);
      const own = figures.filter((r) => r.figure?.hole === hole);
      if (hole !== null && own.length > 0) return { of, rows: own };
      const torque = figures.filter((r) => r.figure?.what === 'torque' && !r.figure.hole);
      return { of, rows: [...torque, ...figures.filter((r) => !torque.includes(r))] };
    }
    default:
      return null;
  }
}

/** As they stand to be read before this way, cautions first. */
const READ: Readonly<Record<'removal' | 'fitting', readonly string[]>> = {
  removal: ['caution', 'loose', 'marks', 'routes', 'tip', 'note'],
  fitting: ['caution', 'joint', 'loose', 'marks', 'routes', 'tip', 'note'],
};

function readHere(figures: readonly KnownRow[], way: 'removal' | 'fitting'): KnownRow[] {
  return READ[way].flatMap((what) =>
    figures.filter(
      ({ figure }) =>
        figure?.what === what && figure.hole === undefined && (figure.way ?? way) === way,
    ),
  );
}
