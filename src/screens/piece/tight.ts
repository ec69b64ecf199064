/** Tight: in its order, pass by pass, at the torque as printed. */

import { printQuantity } from '../../bolt/read/units.ts';
import { figureOn } from '../../bolt/torque/wrench.ts';
import { otherFigure } from '../../job/fold/other-figure.ts';
import { breaking, stopsBreaking } from '../../job/judge/marks/tight-set.ts';
import type { Job, PassSpec, PieceNow, Wish } from '../../model/types.ts';
import { shapeOf } from '../../piece/looks.ts';
import { passAt } from '../../piece/passes.ts';
import { ordinal } from '../../piece/words.ts';
import { torqueRows } from '../../plan/known/torque-rows.ts';
import { type PassNow, passUnderWay, toFill } from '../../plan/piece/piece-now.ts';
import { ask } from '../ask/field.ts';
import { noteKey } from '../ask/note.ts';
import { ON } from '../base/enter.ts';
import { GO } from '../base/key.ts';
import { holeNamed, requestMark, say, stay, toStep } from '../base/moves.ts';
import type { Page } from '../base/page.ts';
import { piecePage } from '../base/piece-page.ts';
import type { State, Updated } from '../base/state.ts';
import { bold, line, width } from '../kit/text.ts';
import type { InQuestion } from '../known/in-question.ts';
import { askWhich, notSo } from '../known/not-so.ts';
import { asItWasKey } from '../paper/photos.ts';
import { farKey, farPage } from './far.ts';
import { goKey, pointKey } from './point.ts';
import { onPiece, type StepView, stepScreen } from './step.ts';
import { adviceKey, leftKey, mendedKey, troubleKey } from './step-keys.ts';
import { type OnTight, sayPass, sayPrinted, settingOf, tightSaid } from './tight-said.ts';
import { redoKey, undoKey } from './undo.ts';
import { marksKey, restsSaid, unmarkKey } from './unmark.ts';

function onTight(state: State, view: StepView<'tight'>): OnTight | null {
  const here = onPiece(state, view);
  if (!here) return null;
  const { piece, job, step } = here;
  const { kinds } = job.upper;
  const now = passUnderWay(piece, kinds);
  // The next one in the order of this pass, where none is pointed at.
  const again = now === null ? otherFigure(job, piece) : [];
  const lit = step.here ?? now?.rest[0] ?? again[0]?.hole ?? null;
  const pass = now && passAt(piece.spec, kinds, now.pass, lit ?? '');
  const waits = lit !== null && now?.rest.includes(lit) === true;
  return {
    ...here,
    lit,
    now,
    again,
    pass,
    breaks: pass && waits ? breaksAt(job, piece, pass, lit) : null,
  };
}

/** What the torque of this pass would break there, while nobody gave a reason for it. */
function breaksAt(job: Job, piece: PieceNow, pass: PassSpec, lit: string): string | null {
  const hole = holeNamed(piece, lit);
  const found = hole ? breaking(job, piece, pass, [hole], undefined) : [];
  return stopsBreaking(job, piece, pass, found)?.refused.say ?? null;
}

function click(here: OnTight): Updated {
  const { state, key, piece, now, pass, again, lit } = here;
  if (lit === null) return say(state, 'Nothing here is left to tighten.');
  const wish: Wish = { do: 'tight', piece: key, holes: [lit] };
  const off = again.find((o) => o.hole === lit);
  if (off) return requestMark(state, { ...wish, set: off.printed });
  if (isEmpty(here) && !holeNamed(piece, lit)?.trouble)
    return say(state, `${lit} is empty: its bolt goes in first. Tab.`);
  // Pointed at after it had this pass, a bolt is not asked for the next one: nobody has gone round yet.
  if (now?.done.includes(lit)) return say(state, `${lit} has had this pass. Next: ${now.rest[0]}.`);
  if (!now?.rest.includes(lit)) return requestMark(state, wish);
  const empty = toFill(piece).filter((h) => h.trouble === null);
  if (empty.length > 0 && now.number === 1 && now.done.length === 0) {
    const bolts = empty.length === 1 ? '1 hole is' : `${empty.length} holes are`;
    const text = `${bolts} still empty: all bolts go in by fingers before one is tightened.`;
    const refused = { code: 'holes-empty', say: text, data: {}, overrulable: true };
    return ask(state, { ask: 'why', wish: { ...wish, pass: now.pass.name }, refused });
  }
  const torque = pass?.torque?.quantity;
  const set = torque ? figureOn(state.wrenches, torque) : null;
  const onScale = set === null ? {} : { set };
  return requestMark(state, { ...wish, pass: now.pass.name, ...onScale });
}

/** No bolt is there to be tightened. */
const isEmpty = ({ piece, lit }: OnTight) => holeNamed(piece, lit)?.state === 'out';

/** What the hand felt, in the words of the pass. */
function clickLabel({ now, breaks }: OnTight): string {
  if (breaks !== null) return 'why it stops';
  const pass = now?.pass;
  const [kind] = (pass?.name ?? '').split(' ');
  if (kind === 'snug') return 'snug';
  if (kind === 'final') return 'holds';
  if (kind === 'loosen') return 'turned back';
  if (kind === 'printed') return 'all of it done';
  if (kind === 'angle' && pass?.angle) return `turned ${pass.angle}\u00b0`;
  // With no figure to set, no wrench clicks.
  return pass?.torque === null ? 'tight by feel' : 'clicked';
}

/** Null for a piece that the file does not know. */
function inPass({ job, key, piece, pass, lit }: OnTight): InQuestion | null {
  if (!job.pieces.has(key)) return null;
  return { of: { piece: key }, rows: torqueRows(job, piece, pass, lit) };
}

/** What is printed and not so; where no torque is printed, which one it is. */
function askTorque(here: OnTight): Updated {
  const { state, key } = here;
  const found = inPass(here);
  if (!found || found.rows.length > 0) return found ? askWhich(state, found) : stay(state);
  return ask(state, { ask: 'write', piece: key, key: 'torque', more: [], say: null });
}

export const tightScreen = stepScreen({
  here: onTight,
  keys: [
    pointKey,
    {
      id: 'click',
      presses: GO,
      // A key that is held down, an elbow on the bar, is no click of a wrench: each bolt takes a press of its own.
      anew: GO,
      label: (here) => (isEmpty(here) ? '' : clickLabel(here)),
      help: 'the lit bolt has had this pass: its torque, or its angle',
      does: click,
    },
    {
      id: 'pulled',
      presses: ['!'],
      // Once round at the end, a bolt that turns on is what is looked for.
      label: (here) => {
        if (isEmpty(here)) return '';
        const round = here.now?.pass.name.startsWith('final');
        return round ? 'keeps turning' : 'turns without tightening';
      },
      help: 'it turns without tightening: the thread is pulled',
      does: ({ state, key, lit }) =>
        lit === null
          ? stay(state)
          : requestMark(state, { do: 'state', piece: key, hole: lit, state: 'pulled' }),
    },
    undoKey,
    redoKey,
    unmarkKey,
    marksKey,
    farKey,
    {
      ...notSo<OnTight>(inPass),
      // The foot is full here.
      label: (here) => (inPass(here)?.rows.length === 0 ? 'its torque' : 'not so'),
      holds: (here) => inPass(here) !== null,
      does: askTorque,
    },
    troubleKey,
    mendedKey,
    adviceKey,
    {
      id: 'to-in',
      presses: ['tab'],
      label: 'put more in',
      help: 'back to the bolts that are not in yet',
      holds: ({ piece }) => toFill(piece).length > 0,
      does: ({ state }) => toStep(state, ON),
    },
    leftKey,
    asItWasKey,
    noteKey,
    goKey,
  ],
  draw: drawTight,
});

/** Lines that may be said here where the screen is high enough: cautions are not cut for the map. */
const MOST = 9;

function drawTight(here: OnTight): Page {
  const { state, piece, now, pass, lit, breaks } = here;
  if (!now || !pass) {
    return piecePage(here, (h) => ({ here: h.name === lit }), {
      right: line('tight'),
      say: [line(bold(againSaid(here) ?? 'Nothing is left to tighten.'))],
    });
  }
  const before = lastDone(here, now);
  const set = settingOf(here, pass)?.set ?? null;
  const where = sayPrinted(piece, pass).trim();
  const both = [where, set ?? ''].filter((t) => t !== '');
  const fits = width(both.join('   ')) <= state.columns;
  const under = fits ? both : [where];
  const rest = {
    right: line(`tight, pass ${now.number} of ${now.of}: ${sayPass(pass)}`),
    under: line(under.join('   ')),
    say: [...tightSaid(here, { now, pass, before, set: fits ? null : set }), ...restsSaid(here)],
    most: MOST,
  };
  // To be read from two metres is only what may be set.
  if (state.far && breaks === null) {
    const hole = holeNamed(piece, lit);
    const item = hole?.holds ?? hole?.belongs ?? null;
    const figure = settingOf(here, pass)?.value ?? printedFigure(pass);
    const left = now.rest.length;
    return farPage(here, { hole: lit, item, figure, left, leftSaid: 'left in this pass' }, rest);
  }
  const number = (name: string) => {
    const index = now.rest.indexOf(name);
    return index < 0 ? '' : ordinal(now.done.length + index + 1);
  };
  return piecePage(
    here,
    (h) => {
      const shape = shapeOf(h);
      const isIn = shape === 'in' || shape === 'tight';
      return {
        shape: isIn ? (now.rest.includes(h.name) ? 'in' : 'tight') : shape,
        here: h.name === lit,
        label: number(h.name),
        ...(isIn && !now.rest.includes(h.name)
          ? { said: now.done.includes(h.name) ? 'had this pass' : 'not in this pass' }
          : {}),
      };
    },
    rest,
    before !== null && lit !== null && lit === now.rest[0] ? { from: before, to: lit } : null,
  );
}

/** A bolt that was set to another figure is set right from here, once all are tight. */
function againSaid({ again, lit }: OnTight): string | null {
  const off = again.find((o) => o.hole === lit);
  if (!off) return null;
  const how = off.way === 'above' ? 'Let it go, then tighten' : 'Tighten';
  return `${off.hole} was set to ${off.set}. ${how} it to ${off.printed}.`;
}

/** `10 N·m`, `90°`; where it has neither the name of the pass, or its text as it is printed. */
function printedFigure({ torque, angle, name }: PassSpec): string {
  if (torque?.quantity) return printQuantity(torque.quantity);
  return angle === null ? (torque?.text ?? name) : `${angle}°`;
}

/** The hole done last in this pass, if it was done alone; null where none was. */
function lastDone({ job, key }: OnTight, now: PassNow): string | null {
  const last = job.entries.findLast(
    (e) => e.piece === key && e.verb === 'tight' && job.living.has(e.id),
  );
  const hole = last?.value === now.pass.name && last.hole?.length === 1 ? last.hole[0] : undefined;
  return hole !== undefined && now.done.includes(hole) ? hole : null;
}
