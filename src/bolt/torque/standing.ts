/** What a bolt stands in steel: `putback torque thread`. Never a torque for the job: that is the maker's to give. */
import type { Quantity } from '../../model/types.ts';
import { type Loads, loadsOf, strengthOf } from '../thread/strength.ts';
import { type Thread, threadOf } from '../thread/threads.ts';
import { MAKER_FIRST } from './cautions.ts';
import { atYield, nutFactorTorque } from './preload.ts';

/** An unrounded figure. */
export type StandingFigure = Pick<Quantity, 'value' | 'unit'>;

interface Standing {
  thread: Thread;
  /** N; null without a mark that has figures. */
  loads: Loads | null;
  torque: StandingFigure | null;
  preload: StandingFigure | null;
  /** The short formula beside it, at three quarters of the proof load. */
  byNutFactor: {
    K: number;
    torque: StandingFigure;
    preload: StandingFigure;
    source: string;
  } | null;
  /** What these figures are, to be shown beside them. */
  label: string;
  method: string;
  source: string;
  caution: string;
}

export interface StandingInput {
  thread: string;
  class: string | null;
  /** Friction of thread and head; 0.14 unless said: steel, as delivered or lightly oiled. */
  friction?: number;
  /** Share of yield in per cent; 90 unless said. */
  use?: number;
  /** Nut factor; 0.20 unless said: dry steel. */
  K?: number;
}

const LABEL = 'what the bolt stands in steel, not a torque for this job';

/** Share of the proof load for joints that are undone again: Shigley's Mechanical Engineering Design. */
const REUSED = 0.75;

const newtons = (value: number): StandingFigure => ({ value, unit: 'N' });
const newtonMetres = (value: number): StandingFigure => ({ value, unit: 'N·m' });

/** Loads, preload and torque of a bolt. Null for a thread without figures, or friction and share that cannot be. */
export function standing(input: StandingInput): Standing | null {
  const { friction = 0.14, use = 90, K = 0.2 } = input;
  const thread = threadOf(input.thread);
  const possible = friction > 0 && friction < 1 && use > 0 && use <= 100 && K > 0;
  if (!thread || !possible) return null;
  const loads = loadsOf(thread, input.class);
  const at = atYield(thread, input.class ?? '', friction, use / 100);
  const proof = loads?.proof ?? null;
  const clamp = proof === null ? null : REUSED * proof;
  const strength = strengthOf(input.class, thread.d)?.source;
  const profile = thread.system === 'metric' ? 'ISO 724, ISO 898-1' : 'ASME B1.1';
  return {
    thread,
    loads,
    torque: at && newtonMetres(at.torque),
    preload: at && newtons(at.preload),
    byNutFactor:
      clamp === null
        ? null
        : {
            K,
            torque: newtonMetres(nutFactorTorque(thread, clamp, K)),
            preload: newtons(clamp),
            source: 'T = K d F at 75 % of the proof load, as in Shigley',
          },
    label: LABEL,
    method: `VDI 2230: ${use} % of yield, pulled and twisted, friction ${friction}`,
    source: [profile, strength, 'VDI 2230-1:2015, ISO 16047']
      .filter((s) => s !== undefined)
      .join('; '),
    caution: MAKER_FIRST,
  };
}
