/** One page for a browser: whole in itself, with its print style, without a script and with nothing to fetch. */
import { Markup, m } from './markup.ts';

export const SIZES = {
  a4: { name: 'A4', width: 210, height: 297 },
  letter: { name: 'Letter', width: 215.9, height: 279.4 },
} as const;
export type SizeName = keyof typeof SIZES;

/** Kept free at each edge, mm: few printers reach farther. */
const MARGIN = 10;

/** What may be printed on, mm. */
export function within(size: SizeName, margin = MARGIN): { width: number; height: number } {
  const { width, height } = SIZES[size];
  return { width: width - 2 * margin, height: height - 2 * margin };
}

export interface PageSpec {
  title: string;
  size: SizeName;
  margin?: number;
  /** Rules of this page alone; ours, never a text of a file. */
  style?: string;
  /** Where its photographs are: in it, or in a folder beside it. */
  pictures?: 'inside' | 'beside';
  body: Markup;
}

const STYLE = `
*{box-sizing:border-box}
html{font:10pt/1.35 sans-serif;color:#000;background:#fff}
body{margin:0}
h1{font-size:15pt;margin:0 0 1mm}
h2{font-size:11.5pt;margin:5mm 0 1mm;border-bottom:.3mm solid #000;break-after:avoid}
h3{font-size:10pt;margin:2.5mm 0 .5mm;break-after:avoid}
p,ul,ol,dl{margin:1mm 0}
ul,ol{padding-left:5mm}
li,p,td,th,dd,dt,h1,h2,h3,figcaption{overflow-wrap:anywhere}
svg{display:block;break-inside:avoid;max-width:none}
table{border-collapse:collapse;width:calc(100% - .4mm);margin:0 .2mm}
th,td{border:.2mm solid #666;padding:.6mm 1.2mm;text-align:start;vertical-align:top}
th{font-weight:bold;background:#fff;overflow-wrap:break-word}
th[scope=row]{white-space:nowrap;width:1%}
tr{break-inside:avoid}
thead{display:table-header-group}
.quiet{color:#333;font-size:8.5pt}
.loud{border:.5mm solid #000;padding:1mm 2mm;font-weight:bold}
.sheet{break-after:page}
.sheet:last-child{break-after:auto}
@media screen{body{margin:6mm auto;padding:0 3mm}.sheet{margin-bottom:12mm}}
`;

const IMAGES = { inside: ' data:', beside: ' file:' } as const;

export function page({ title, size, margin = MARGIN, style = '', pictures, body }: PageSpec) {
  const { width, height } = SIZES[size];
  const images = pictures ? `; img-src${IMAGES[pictures]}` : '';
  const policy = `default-src 'none'; style-src 'unsafe-inline'${images}; base-uri 'none'; form-action 'none'`;
  const sheet = `@page{size:${width}mm ${height}mm;margin:${margin}mm}
@media screen{body{width:${width - 2 * margin}mm;box-sizing:content-box}}`;
  const { text } = m`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="generator" content="putback">
<meta name="referrer" content="no-referrer">
<meta name="viewport" content="width=device-width">
<title>${title}</title>
<style>${new Markup(`${STYLE.trim()}\n${sheet}\n${style}`)}</style>
</head>
<body>
${body}
</body>
</html>
`;
  return text;
}
