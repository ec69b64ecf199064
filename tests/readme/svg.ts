/** A screen as an SVG for the README, and several after each other as one that moves. */
import type { Colour, Line, Span } from '../../src/screens/kit/text.ts';
import { width } from '../../src/screens/kit/text.ts';

/** Of a cell of the terminal, px. */
const W = 8.4;
const H = 18;
const EDGE = 12;
const INK = '#d8dee4';
const GROUND = '#16191d';
const COLOURS: Readonly<Record<Colour, string>> = {
  red: '#ff6b5e',
  green: '#5fce6c',
  magenta: '#e07bd8',
  cyan: '#4fc4d0',
};

const escaped = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

const px = (n: number) => String(Math.round(n * 100) / 100);

function drawSpan(s: Span, x: number, y: number): string {
  const cells = width(s.text);
  const at = `x="${px(EDGE + x * W)}" y="${px(EDGE + y * H + 13)}"`;
  const ink = s.inverse ? GROUND : s.colour ? COLOURS[s.colour] : INK;
  const weight = s.bold ? ' font-weight="bold"' : '';
  const struck = s.struck ? ' text-decoration="line-through"' : '';
  const back = s.inverse
    ? `<rect x="${px(EDGE + x * W)}" y="${px(EDGE + y * H)}" width="${px(cells * W)}" height="${H}" fill="${INK}"/>`
    : '';
  const text = `<text ${at} fill="${ink}"${weight}${struck} textLength="${px(cells * W)}" xml:space="preserve">${escaped(s.text)}</text>`;
  return s.text.trim() === '' && !s.inverse ? '' : back + text;
}

function drawLine(line: Line, y: number): string {
  let x = 0;
  return line
    .map((s) => {
      const drawn = drawSpan(s, x, y);
      x += width(s.text);
      return drawn;
    })
    .join('');
}

function page(columns: number, rows: number, inside: string, title: string): string {
  const [w, h] = [px(columns * W + 2 * EDGE), px(rows * H + 2 * EDGE)];
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="0 0 ${w} ${h}" font-family="ui-monospace, Menlo, Consolas, 'DejaVu Sans Mono', monospace" font-size="14">
<title>${escaped(title)}</title>
<rect width="100%" height="100%" rx="8" fill="${GROUND}"/>
${inside}
</svg>
`;
}

/** One screen. */
export function still(lines: readonly Line[], columns: number, title: string): string {
  return page(columns, lines.length, lines.map(drawLine).join('\n'), title);
}

export interface Frame {
  lines: readonly Line[];
  /** How long it is seen, s. */
  seconds: number;
}

/** A row that stands unchanged over some frames, from one moment to another, s. */
interface Run {
  text: string;
  from: number;
  to: number;
}

function runsOf(frames: readonly Frame[], y: number): Run[] {
  const runs: Run[] = [];
  let at = 0;
  for (const { lines, seconds } of frames) {
    const text = drawLine(lines[y] ?? [], y);
    const last = runs.at(-1);
    if (last?.text === text) last.to += seconds;
    else runs.push({ text, from: at, to: at + seconds });
    at += seconds;
  }
  return runs.filter((run) => run.text !== '');
}

/** Screens one after the other, over and over; who wants no movement sees the last. */
export function moving(frames: readonly Frame[], columns: number, title: string): string {
  const all = frames.reduce((sum, f) => sum + f.seconds, 0);
  const rows = frames[0]?.lines.length ?? 0;
  const runs = Array.from({ length: rows }, (_, y) => runsOf(frames, y)).flat();
  const moments = [...new Set(runs.map(({ from, to }) => `${from} ${to}`))];
  const css = moments.map((moment, i) => {
    const [from = 0, to = 0] = moment.split(' ').map((s) => (100 * Number(s)) / all);
    const start = from < 0.005 ? '' : '0%{visibility:hidden}';
    const end = to > 99.995 ? '' : `${px(to)}%{visibility:hidden}`;
    return `@keyframes f${i}{${start}${px(from)}%{visibility:visible}${end}}`;
  });
  const drawn = runs.map(({ text, from, to }) => {
    const last = to > all - 0.001 ? ' l' : '';
    return `<g class="f${last}" style="animation-name:f${moments.indexOf(`${from} ${to}`)}">${text}</g>`;
  });
  const style = `<style>.f{visibility:hidden;animation:${px(all)}s step-end infinite}
@media (prefers-reduced-motion:reduce){.f{animation:none}.l{visibility:visible}}
${css.join('\n')}</style>`;
  return page(columns, rows, `${style}\n${drawn.join('\n')}`, title);
}
