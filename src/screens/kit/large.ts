/** A count in large figures, to be read from a step away. */
import { bold, centred, type Line, line, width } from './text.ts';

const FIGURES: Readonly<Record<string, readonly string[]>> = {
  '0': ['####', '#  #', '#  #', '#  #', '####'],
  '1': ['  # ', ' ## ', '  # ', '  # ', ' ###'],
  '2': ['####', '   #', '####', '#   ', '####'],
  '3': ['####', '   #', ' ###', '   #', '####'],
  '4': ['#  #', '#  #', '####', '   #', '   #'],
  '5': ['####', '#   ', '####', '   #', '####'],
  '6': ['####', '#   ', '####', '#  #', '####'],
  '7': ['####', '   #', '  # ', '  # ', '  # '],
  '8': ['####', '#  #', '####', '#  #', '####'],
  '9': ['####', '#  #', '####', '   #', '####'],
  o: ['    ', '    ', '####', '#  #', '####'],
  f: [' ###', ' #  ', '### ', ' #  ', ' #  '],
  u: ['    ', '    ', '#  #', '#  #', '####'],
  t: [' #  ', ' #  ', '### ', ' #  ', ' ## '],
  ' ': ['  ', '  ', '  ', '  ', '  '],
};
const HEIGHT = 5;

/** The text in large figures, and once in small ones below; small alone where there is no room. */
export function large(text: string, columns: number): Line[] {
  const small = centred(line(bold(text)), columns);
  const figures = [...text].map((c) => FIGURES[c]);
  if (figures.some((f) => f === undefined)) return [small];
  const rows = Array.from({ length: HEIGHT }, (_, y) => figures.map((f) => f?.[y] ?? '').join(' '));
  if (rows.some((r) => width(r) > columns)) return [small];
  return [...rows.map((r) => centred(line(bold(r)), columns)), [], small];
}
