/** What stands behind a figure and says the same once more, in another unit or other words, or how far off it may be. */
import type { SaidAt } from './one-or-other.ts';
import type { Reader } from './stage-types.ts';
import { agrees, angleAt, spreadAt, torqueAt } from './stage-words.ts';

/** `180° (2 x 90°)`, `90° (1/4 turn)`, `90° = 1/4 turn`: the angle before it once more, which must be as large. */
export const angleOnceMore: Reader = (left, reading, at) => {
  const before = reading.stages.at(-1);
  if (before?.do !== 'angle') return 0;
  const found = /^\s*(?:\((?:=\s*)?([^()]*)\)|(?:[/=]|or\b)\s*)/i.exec(left);
  if (!found) return 0;
  const said = found[1] ?? left.slice(found[0].length);
  const angle = angleAt(said.trimStart());
  // A plus sign is one more, in brackets too.
  if (!angle || said.trimStart().startsWith('+')) return 0;
  const lead = said.length - said.trimStart().length;
  if (found[1] !== undefined && lead + angle.length < said.trimEnd().length) return 0;
  const all = angle.degrees * angle.times;
  const same =
    Math.abs(all - before.degrees) < 1 &&
    (angle.to ?? angle.degrees) - angle.degrees === (before.to ?? before.degrees) - before.degrees;
  const length = found[1] === undefined ? found[0].length + lead + angle.length : found[0].length;
  if (!same) reading.differ.push({ text: left.slice(0, length).trim(), at });
  return length;
};

/** `(1.2 kgf·m, 9 lbf·ft)`: the figure before it once more. */
export const inBrackets: Reader = (left, reading, at) => {
  const before = reading.stages.at(-1);
  const bracket = /^[([{]([^()[\]{}]*)[)\]}]/.exec(left);
  if (!bracket?.[1] || before?.do !== 'torque') return 0;
  const differ: SaidAt[] = [];
  for (const { 0: part, index } of bracket[1].matchAll(/[^,;/]+(?:,\d+[^,;/]*)*/g)) {
    const text = part.trim();
    const found = torqueAt(text);
    if (found?.length !== text.length) return 0;
    const place = at + 1 + index + part.length - part.trimStart().length;
    if (!agrees(before.quantity, found.quantity, text)) differ.push({ text, at: place });
  }
  reading.differ.push(...differ);
  return bracket[0].length;
};

/** `22.5 N·m / 16.6 lbf·ft`, `10 N·m 7 lbf·ft`: the same, behind a stroke, a dash, a comma or a blank, in another unit. */
export const besideIt: Reader = (left, reading, at) => {
  const before = reading.stages.at(-1);
  const sign = /^\s*(?:[/=,;–—-]|or\b|(?=\s))\s*/.exec(left)?.[0];
  if (sign === undefined || before?.do !== 'torque' || reading.waiting.length > 0) return 0;
  // With a word between it is no second figure of the same.
  if (/[^\s()[\]{}]/.test(reading.text.slice(reading.end, at))) return 0;
  const found = torqueAt(left.slice(sign.length));
  if (!found || found.quantity.unit === before.quantity.unit) return 0;
  const text = left.slice(sign.length, sign.length + found.length);
  if (!agrees(before.quantity, found.quantity, text)) {
    reading.differ.push({ text, at: at + sign.length });
  }
  return sign.length + found.length;
};

/** `90° ± 5°`, `20 N·m (±2)`, `20 N·m ± 10 %`: how far the figure before it may be off. */
export const giveOrTake: Reader = (left, reading) => {
  const before = reading.stages.at(-1);
  if (reading.waiting.length > 0) return 0;
  const last = reading.stages.length - 1;
  if (before?.do === 'angle' && before.to === null) {
    const found = spreadAt(left, before.degrees, '°');
    if (found) reading.stages[last] = { do: 'angle', degrees: found.from, to: found.to };
    return found?.length ?? 0;
  }
  if (before?.do !== 'torque' || before.quantity.to !== null) return 0;
  const { value, unit } = before.quantity;
  const found = spreadAt(left, value, unit);
  const quantity = found && { value: found.from, to: found.to, unit };
  if (quantity) reading.stages[last] = { ...before, quantity };
  return found?.length ?? 0;
};
