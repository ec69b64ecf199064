/** What to set on a torque wrench, also with an adapter on it. Lengths in mm, angles in degrees. */
import type { Quantity } from '../../model/types.ts';
import { printNumber, tidy } from '../read/numbers.ts';
import { convert } from '../read/units.ts';
import type { StandingFigure } from './standing.ts';

/** A wrench of the bench. */
export interface Wrench {
  name: string;
  /** Range of its scale, in its unit. */
  from: number;
  to: number;
  unit: string;
  /** Smallest step of its scale; null: without steps. */
  step: number | null;
  /** From the square to the middle of the grip, mm; null: not measured. */
  length: number | null;
}

/** An adapter on the square. An extension along the axis of the bolt has length 0. */
export interface Adapter {
  /** From the wrench's square to the bolt, mm. */
  length: number;
  /** Between adapter and wrench: 0 straight out, 90 square to it, 180 back along the handle. */
  angle: number;
}

/** cos α, exactly 0 where the adapter stands square to the wrench. */
function cosine(angle: number): number {
  const cos = Math.cos((angle * Math.PI) / 180);
  return Math.abs(cos) < 1e-12 ? 0 : cos;
}

/**
 * The setting for a torque M at the bolt: S = M L / (L + A cos α), the hand at the middle of the grip (US Army TM 9-254,
 * figure 4-6; FAA AC 43.13-1B, figure 7-2). In the unit of M. Null where the adapter reaches back to the hand or past it,
 * or L is not a length.
 */
export function adapterSetting(M: number, L: number, adapter: Adapter): number | null {
  const arm = L + adapter.length * cosine(adapter.angle);
  if (!(L > 0) || adapter.length < 0 || arm <= 0) return null;
  return adapter.length === 0 ? M : (M * L) / arm;
}

/** A setting with an adapter for a torque as printed, on a wrench of length L, unrounded; null as for adapterSetting. */
export function withAdapter(torque: Quantity, L: number, adapter: Adapter) {
  const value = adapterSetting(aim(torque), L, adapter);
  if (value === null || convert(1, torque.unit, 'N·m') === null) return null;
  return {
    value,
    unit: torque.unit,
    method: 'S = M L / (L + A cos α), the hand at the middle of the grip',
    source: 'US Army TM 9-254, figure 4-6; FAA AC 43.13-1B, figure 7-2',
  };
}

export interface Setting {
  wrench: string;
  /** What to set, rounded to the wrench's step; null when it cannot be set on this wrench. */
  set: StandingFigure | null;
  /** Before rounding; null when it cannot be worked out. */
  exact: StandingFigure | null;
  reach: 'ok' | 'below' | 'above' | 'unknown';
  say: string;
}

/** For a range as printed: its middle. */
export function aim(q: Quantity): number {
  return q.to === null ? q.value : tidy((q.value + q.to) / 2);
}

function toStep(value: number, step: number | null): number {
  return step === null || step <= 0 ? value : tidy(Math.round(value / step) * step);
}

/** What to set on one wrench for a torque as printed. */
export function settingOn(
  wrench: Wrench,
  torque: Quantity,
  adapter: Adapter | null = null,
): Setting {
  const none = (reach: Setting['reach'], exact: StandingFigure | null, say: string): Setting => ({
    wrench: wrench.name,
    set: null,
    exact,
    reach,
    say,
  });
  const plain = convert(aim(torque), torque.unit, wrench.unit);
  if (plain === null) return none('unknown', null, `${torque.unit} cannot be set on a wrench.`);
  const bare = adapter === null || adapter.length === 0 || cosine(adapter.angle) === 0;
  if (!bare && wrench.length === null) {
    return none(
      'unknown',
      null,
      `Measure the ${wrench.name} wrench from the square to the middle of its grip.`,
    );
  }
  const value = bare ? plain : adapterSetting(plain, wrench.length ?? 0, adapter);
  if (value === null) return none('unknown', null, 'The adapter reaches back past the hand.');
  const exact = { value, unit: wrench.unit };
  const set = toStep(value, wrench.step);
  if (set < wrench.from)
    return none('below', exact, `Off the bottom of the ${wrench.name} wrench.`);
  if (set > wrench.to) return none('above', exact, `Off the top of the ${wrench.name} wrench.`);
  const figure = { value: set, unit: wrench.unit };
  const other = torque.unit === wrench.unit ? '' : ` ${wrench.unit}`;
  return {
    wrench: wrench.name,
    set: figure,
    exact,
    reach: 'ok',
    say: `set ${printNumber(set, 4)}${other} on the ${wrench.name} wrench`,
  };
}

/** What to set on each wrench of the bench, those that reach it first. */
export function settings(
  wrenches: readonly Wrench[],
  torque: Quantity,
  adapter: Adapter | null = null,
): Setting[] {
  const all = wrenches.map((w) => settingOn(w, torque, adapter));
  return [...all.filter((s) => s.reach === 'ok'), ...all.filter((s) => s.reach !== 'ok')];
}

/**
 * What a person takes: the wrench that reads as the manual prints, where it reaches, else the first that does. Null where
 * none does.
 */
export function bestSetting(wrenches: readonly Wrench[], torque: Quantity): Setting | null {
  const reaching = settings(wrenches, torque).filter((s) => s.reach === 'ok');
  const reads = (s: Setting) => wrenches.find((w) => w.name === s.wrench)?.unit;
  return reaching.find((s) => reads(s) === torque.unit) ?? reaching[0] ?? null;
}

/** Its figure as the scale shows it: `10.5 N·m`; null where none reaches. */
export function figureOn(wrenches: readonly Wrench[], torque: Quantity): string | null {
  const set = bestSetting(wrenches, torque)?.set ?? null;
  return set && `${printNumber(set.value, 4)} ${set.unit}`;
}

/**
 * A torque in N·m for a wrench that reads so: `95 lbf·in as printed → set 10.7 N·m`, or `here` where it was corrected. Null when it already is
 * in that unit or cannot be turned into it.
 */
export function sayConverted(
  torque: Quantity,
  unit = 'N·m',
  how: 'as printed' | 'here' = 'as printed',
): string | null {
  const value = convert(aim(torque), torque.unit, unit);
  if (value === null || torque.unit === unit) return null;
  const range = torque.to === null ? '' : `..${printNumber(torque.to)}`;
  return `${printNumber(torque.value)}${range} ${torque.unit} ${how} → set ${printNumber(value, 3)} ${unit}`;
}
