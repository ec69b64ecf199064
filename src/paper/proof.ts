/** A line of 100 mm: whoever lays a rule along it knows whether the printer kept the scale. */
import { type Markup, m } from './markup.ts';

const PROOF = 100;
const X = 1;

/** An SVG of its own, as wide as said and 8 mm high. */
export function proofLine(width: number): Markup {
  const ticks = Array.from({ length: 11 }, (_, i) => `M${X + i * 10} ${i % 5 === 0 ? 1.5 : 2.5}V5`);
  const say =
    'This line is 100 mm long. If it is not, print again at 100 %, without “fit to page”.';
  return m`<svg class="proof" width="${width}mm" height="9mm" viewBox="0 0 ${width} 9"><path class="proof-line" fill="none" stroke="#000" stroke-width=".25" d="M${X} 5H${X + PROOF}"/><path fill="none" stroke="#000" stroke-width=".25" d="${ticks.join('')}"/><text x="${X}" y="8.3" font-size="2.8">${say}</text></svg>`;
}
