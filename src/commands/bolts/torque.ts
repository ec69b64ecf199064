/** Torque: in other units, on this wrench, against the thread. The maker's figure goes first, always. */

import { readLength } from '../../bolt/read/length.ts';
import { printNumber } from '../../bolt/read/numbers.ts';
import { readFront } from '../../bolt/read/spelling.ts';
import { convert, printQuantity, readQuantity } from '../../bolt/read/units.ts';
import { sayMark, strengthOf } from '../../bolt/thread/strength.ts';
import { threadOf } from '../../bolt/thread/threads.ts';
import { type Against, againstHole } from '../../bolt/torque/against-hole.ts';
import { MAKER_FIRST } from '../../bolt/torque/cautions.ts';
import { sane } from '../../bolt/torque/sane.ts';
import { likelyMark, maybeHollow, notSteel } from '../../bolt/torque/solid.ts';
import { readStages } from '../../bolt/torque/stages.ts';
import { standing } from '../../bolt/torque/standing.ts';
import { strip } from '../../bolt/torque/stripping.ts';
import { aim, settings, withAdapter } from '../../bolt/torque/wrench.ts';
import type { Quantity } from '../../model/types.ts';
import { benchIn } from '../base/bench-of.ts';
import { type Answer, answer, type Call, misuse, optionText, outOf } from '../base/command.ts';

export function run(call: Call): Answer {
  const [what = '', word] = call.words;
  const said = word ?? optionText(call, 'torque') ?? '';
  switch (what) {
    case 'convert':
      return stagesIn(call, said) ?? withTorque(said, (q) => inUnit(call, q));
    case 'wrench':
      return withTorque(said, (q) => onWrench(call, q));
    case 'sane':
      return withTorque(said, (q) => against(call, q));
    case 'thread':
      return bolt(call, said);
    case 'strip':
      return stripping(call);
    default:
      return misuse(
        'usage',
        'Which? torque convert, wrench, thread, sane, strip. --help says more.',
      );
  }
}

/** A text of several stages: which they are, and the one that is a torque in the unit; null where it is one figure or unread. */
function stagesIn(call: Call, text: string): Answer | null {
  if (readQuantity(text)) return null;
  const { stages, rest, differ } = readStages(text);
  if (differ.length > 0) return twoFigures(text);
  const torques = stages.flatMap((s) => (s.do === 'torque' ? [s.quantity] : []));
  const full = torques.at(-1);
  if (full === undefined || rest.length > 0) return null;
  const said = stages.map((s) => {
    if (s.do === 'snug') return 'snug';
    if (s.do === 'torque') return `${s.most ? 'max ' : ''}${printQuantity(s.quantity)}`;
    if (s.do === 'angle') return `${s.degrees}${s.to === null ? '' : `..${s.to}`}°`;
    return s.degrees === null ? 'back until loose' : `back ${s.degrees}°`;
  });
  const each = torques.map((q) => inUnit(call, q));
  const bad = each.find((a) => a.exit !== 0);
  if (bad) return bad;
  const json = { ...each.at(-1)?.json, stages: said };
  return answer(json, [`Stages: ${said.join(', ')}.`, ...each.map((a) => a.text)].join('\n'));
}

function withTorque(text: string, then: (q: Quantity) => Answer): Answer {
  if (text === '') return misuse('usage', 'Say the torque: 10 N·m, 95 lbf·in.');
  const { stages, rest, differ } = readStages(text);
  if (differ.length > 0) return twoFigures(text);
  const [one] = rest.length === 0 && stages.length === 1 ? stages : [];
  const q = readQuantity(text) ?? (one?.do === 'torque' ? one.quantity : null);
  if (!q) return misuse('bad-torque', `${text} is no torque: 10 N·m, 95 lbf·in.`);
  return then(q);
}

/** `20 N·m (25 lbf·ft)`: nothing is reckoned with one of two figures that are not the same. */
function twoFigures(text: string): Answer {
  const said = `${text} says two things: its figures are not the same, and one of them is wrong.`;
  return misuse('units-differ', `${said} Look at the manual again.`);
}

/** An option as a number; the fallback when it is not given, null when it is no number. */
function number(call: Call, option: string, fallback: number): number | null {
  const text = optionText(call, option);
  return text === undefined ? fallback : readLength(text);
}

/** The thread of `--thread` or the first word, read whole and with figures; else why not. */
function threadAsked(text: string | undefined, like: string): string | Answer {
  const said = text?.trim() ?? '';
  if (said === '') return misuse('usage', `Say ${like}: M6x1, 1/4-20.`);
  const { thread, rest } = readFront(said);
  const left = rest.replace(/\b(?:LH|left[- ]hand)\b/i, '').trim();
  // What says that it is hollow, or no steel, is known of it.
  const known = maybeHollow([left], null) || notSteel([left]);
  if (thread !== null && left !== '' && !known) {
    return misuse('bad-thread', `${said} was read as ${thread}, and “${left}” was not read.`);
  }
  if (threadOf(said)) return said;
  return misuse('no-figures', `${said} is no thread with figures here: M6x1, 1/4-20, 10-32 UNF.`);
}

/** What the head says: a mark that is known, on a bolt of such a thread; null where nothing is said. */
function markAsked(call: Call, thread: string): string | null | Answer {
  const mark = optionText(call, 'class')?.trim();
  const t = threadOf(thread);
  if (mark === undefined || !t) return null;
  const like = t.system === 'metric' ? '8.8, 10.9, A2-70' : 'grade 5, grade 8, A2-70';
  if (t.system === 'metric' && /^(?:SAE )?gr/i.test(mark)) {
    return misuse(
      'bad-class',
      `${mark} is a mark of inch bolts (SAE J429), and ${t.name} is none: ${like}.`,
    );
  }
  const known = strengthOf(mark, t.d) !== null || sayMark(mark, t.d) !== null;
  return known
    ? mark
    : misuse(
        'bad-class',
        `${mark === '' ? '“”' : mark} is no mark with figures for ${t.name}: ${like}.`,
      );
}

function inUnit(call: Call, q: Quantity): Answer {
  const wanted = optionText(call, 'to') ?? 'N·m';
  const unit = readQuantity(`1 ${wanted}`)?.unit ?? wanted;
  const value = convert(q.value, q.unit, unit);
  const to = q.to === null ? null : convert(q.to, q.unit, unit);
  if (value === null) return misuse('bad-unit', `${q.unit} cannot be turned into ${wanted}.`);
  const text = `${printQuantity(q)} = ${printNumber(value, 4)}${to === null ? '' : `..${printNumber(to, 4)}`} ${unit}`;
  return answer({ value, unit, ...(to === null ? {} : { to }) }, text);
}

function onWrench(call: Call, q: Quantity): Answer {
  const length = number(call, 'length', Number.NaN);
  const adapter = number(call, 'adapter', 0);
  const angle = number(call, 'angle', 0);
  if (length === null || adapter === null || angle === null) {
    return misuse('bad-length', 'Lengths in mm, the angle in degrees.');
  }
  const odd =
    (Number.isNaN(length) ? null : outside('length', length, 50, 3000, 'mm')) ??
    outside('adapter', adapter, 0, 1000, 'mm') ??
    outside('angle', angle, 0, 360, 'degrees');
  if (odd) return odd;
  const fitted = { length: adapter, angle };
  const all = settings(
    benchIn(call.world, call.world.folder)?.wrenches ?? [],
    q,
    adapter === 0 ? null : fitted,
  );
  // An adapter square to the wrench, or none, changes nothing, however long the wrench is.
  const plain = adapter === 0 || Number.isNaN(length) ? 1 : length;
  const setting = withAdapter(q, plain, fitted);
  const known = setting !== null && (!Number.isNaN(length) || setting.value === aim(q));
  if (!known && all.length === 0) {
    return misuse(
      'no-setting',
      'Say --length: from the square to the middle of the grip, longer than the adapter reaches back.',
    );
  }
  const value = known ? setting.value : null;
  const json = { ...(known ? setting : {}), wrenches: all };
  const lines = [
    ...(value === null
      ? []
      : [`Set ${printNumber(value, 4)} ${q.unit} for ${printQuantity(q)} at the bolt.`]),
    ...all.map((s) => s.say),
    'The hand at the middle of the grip.',
  ];
  return answer(json, lines.join('\n'));
}

/** What no wrench is long, and no adapter: the answer that says what is taken; null where it can be. */
function outside(option: string, value: number, from: number, to: number, unit: string) {
  const odd = outOf(value, from, to, unit);
  return odd === null ? null : misuse('bad-length', `--${option} ${value} cannot be: ${odd}.`);
}

function against(call: Call, q: Quantity): Answer {
  const thread = threadAsked(optionText(call, 'thread'), '--thread');
  if (typeof thread !== 'string') return thread;
  const mark = markAsked(call, thread);
  if (mark !== null && typeof mark !== 'string') return mark;
  const bite = biteOf(call, thread);
  if (bite !== null && Number.isNaN(bite)) return misuse('bad-length', BITE);
  const solid = !maybeHollow([thread], null);
  const slip = sane(q, thread, mark, solid);
  if (!slip) return misuse('no-figures', `${thread}, or ${printQuantity(q)}, has no figures here.`);
  const { verdict, suggest, stands, assumed, say, method, source } = slip;
  const held = inHole(call, q, thread, bite);
  const asked = optionText(call, 'into') !== undefined || bite !== null;
  // The hole knows better than the bolt alone.
  const fits = verdict === 'fine' && asked && held.verdict !== 'fine';
  const text = [
    ...(fits ? [] : [say ?? `${verdict}.`]),
    ...(asked || held.lacks.length === 0 ? [heldSaid(held)] : []),
    MAKER_FIRST,
  ].join('\n');
  const json = { verdict, suggest, stands, assumed, method, source, against: held };
  const no = verdict === 'insane' || breaksIt(held.verdict);
  return { ...answer(json, text), exit: no ? 1 : 0 };
}

/** The answer of a script's question: it would break the bolt, or the thread that it is in. */
const breaksIt = (verdict: Against['verdict']) => verdict === 'strips' || verdict === 'yields';

function inHole(call: Call, torque: Quantity | null, thread: string, bite: number | null) {
  const { source: _, ...held } = againstHole({
    torque,
    thread,
    class: optionText(call, 'class') ?? null,
    bite,
    into: optionText(call, 'into') ?? null,
    unlike: maybeHollow([thread], null) ? 'hollow' : null,
    likely: likelyMark(optionText(call, 'class') ?? null, [thread]),
  });
  return held;
}

const heldSaid = ({ verdict, why }: Pick<Against, 'verdict' | 'why'>) => `${verdict}: ${why}`;

const BITE = 'Say --bite in mm, turns or diameters: 9, 9 turns, 1.5 d.';

/** `--bite`, or `--engagement`, in mm; null when it is not said, NaN when it cannot be read. */
function biteOf(call: Call, thread: string): number | null {
  const text = (optionText(call, 'bite') ?? optionText(call, 'engagement'))?.trim();
  if (text === undefined) return null;
  const [, count, by] = /^(\d+(?:[.,]\d+)?)\s*(turns?|d)$/i.exec(text) ?? [];
  if (count === undefined || by === undefined) return readLength(text) ?? Number.NaN;
  const t = threadOf(thread);
  const one = by.toLowerCase() === 'd' ? t?.d : t?.pitch;
  return Number(count.replace(',', '.')) * (one ?? Number.NaN);
}

function bolt(call: Call, name: string): Answer {
  const asked = threadAsked(name, 'the thread');
  if (typeof asked !== 'string') return asked;
  const mark = markAsked(call, asked);
  if (mark !== null && typeof mark !== 'string') return mark;
  const friction = number(call, 'friction', 0.14);
  const use = number(call, 'use', 90);
  if (friction === null || friction <= 0 || friction >= 1) {
    return misuse('bad-number', '--friction is above 0 and below 1: 0.14 unless said.');
  }
  if (use === null || use <= 0 || use > 100) {
    return misuse('bad-number', '--use is above 0 and at most 100 per cent: 90 unless said.');
  }
  const stands = standing({ thread: asked, class: mark, friction, use });
  if (!stands) return misuse('no-figures', `${asked} has no figures here.`);
  const { d, pitch, d2, d3, D1, stressArea, tapDrill } = stands.thread;
  const { loads, torque, preload, method, source, label, byNutFactor } = stands;
  const json = {
    thread: { d, pitch, d2, d3, D1, stressArea, tapDrill },
    loads: loads && { proof: loads.proof, yield: loads.yield, tensile: loads.tensile },
    torque,
    preload,
    byNutFactor,
    label,
    method,
    source,
  };
  const say = (n: number) => printNumber(n, 4);
  const drill = stands.thread.drillName ? ` (${stands.thread.drillName})` : '';
  const lines = [
    `${stands.thread.name}: pitch ${say(pitch)}, d2 ${say(d2)}, d3 ${say(d3)}, D1 ${say(D1)} mm; stress area ${say(stressArea)} mm²; tapping drill ${say(tapDrill)}${drill}`,
    ...(loads
      ? [
          `Loads: proof ${load(loads.proof)}, yield ${load(loads.yield)}, tensile ${load(loads.tensile)}`,
        ]
      : []),
    ...(torque && preload
      ? [`${label}: ${say(torque.value)} N·m, ${load(preload.value)}`, method]
      : ['Say --class, as the head is marked, for loads and torque.']),
    MAKER_FIRST,
  ];
  return answer(json, lines.join('\n'));
}

function load(newtons: number | null): string {
  return newtons === null ? 'not given' : `${printNumber(newtons / 1000, 3)} kN`;
}

function stripping(call: Call): Answer {
  const named = optionText(call, 'thread');
  const into = optionText(call, 'into');
  const engagement = named === undefined ? null : biteOf(call, named);
  if (named === undefined || into === undefined || engagement === null) {
    return misuse('usage', 'Say --thread M6x1 --bite 9 --into "cast aluminium".');
  }
  const thread = threadAsked(named, '--thread');
  if (typeof thread !== 'string') return thread;
  const mark = markAsked(call, thread);
  if (mark !== null && typeof mark !== 'string') return mark;
  if (Number.isNaN(engagement)) return misuse('bad-length', BITE);
  const set = optionText(call, 'torque') ?? call.words[1];
  const q = set === undefined ? null : readQuantity(set);
  const nm = q && convert(q.to ?? q.value, q.unit, 'N·m');
  if (set !== undefined && nm === null) {
    return misuse('bad-torque', `${set} is no torque: 10 N·m, 95 lbf·in.`);
  }
  const held = strip({
    thread,
    engagement,
    into,
    class: mark,
    torque: nm,
  });
  if (!held) return misuse('no-figures', `${thread} or ${into} has no figures here.`);
  const { required, shearArea, load: shears, pull, verdict, assumed, source } = held;
  const at = q === null ? 'the tight bolt' : `${printQuantity(q)}`;
  const against = q === null ? null : inHole(call, q, thread, engagement);
  const lines = [
    ...(against ? [heldSaid(against)] : []),
    `${verdict}: the thread shears at ${load(shears.low)} to ${load(shears.high)}, ${at} pulls ${load(pull.low)} to ${load(pull.high)}.`,
    `From ${printNumber(required.value, 3)} mm of engagement on it is plenty, whatever the friction.`,
    ...(assumed ? [`Reckoned as ${assumed}: the head mark was not said.`] : []),
    MAKER_FIRST,
  ];
  const json = { required, shearArea, load: shears, pull, verdict, assumed, source };
  const no = verdict === "don't" || (against !== null && breaksIt(against.verdict));
  const said = answer({ ...json, ...(against ? { against } : {}) }, lines.join('\n'));
  return { ...said, exit: no ? 1 : 0 };
}
