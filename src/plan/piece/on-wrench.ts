/** A torque as it counts, and what to set on the wrenches of this bench. */
import { printQuantity } from '../../bolt/read/units.ts';
import { bestSetting, sayConverted, settings, type Wrench } from '../../bolt/torque/wrench.ts';
import type { Quantity } from '../../model/types.ts';
import { capital } from '../../model/words.ts';

export interface OnWrench {
  /** `95 lbf·in as printed → set 10.7 N·m`; null where the wrench reads in the printed unit. */
  converted: string | null;
  /** `set 10 on the small wrench`; null where none reaches, and on a bench without wrenches. */
  set: string | null;
  /** What its scale stands at then: `10 N·m`. */
  value: string | null;
  /** Why none reaches: off the bottom of one, off the top of another. */
  off: string | null;
}

/** A wrench with the manual's own unit goes first. Where its steps round the figure the setting says so, since two figures then stand side by side. */
export function onWrench(
  torque: Quantity,
  wrenches: readonly Wrench[],
  corrected = false,
): OnWrench {
  const how = corrected ? 'here' : 'as printed';
  const all = settings(wrenches, torque);
  const best = bestSetting(wrenches, torque) ?? all[0];
  if (!best)
    return { converted: sayConverted(torque, undefined, how), set: null, value: null, off: null };
  if (best.reach !== 'ok') {
    const off = all.map((s) => capital(s.say)).join(' ');
    return { converted: sayConverted(torque, undefined, how), set: null, value: null, off };
  }
  const wrench = wrenches.find((w) => w.name === best.wrench);
  const exact = best.exact?.value ?? 0;
  const off = Math.abs((best.set?.value ?? exact) - exact) > 0.005 * exact;
  const steps = off && wrench?.step ? `, in its steps of ${wrench.step}` : '';
  return {
    converted: wrench ? sayConverted(torque, wrench.unit, how) : null,
    set: `${best.say}${steps}`,
    value: best.set && printQuantity({ ...best.set, to: null }),
    off: null,
  };
}
