/** Drills for tapping. */

/**
 * Metric: the diameter less the pitch, to the nearest tenth, halves to the even one, as ISO 2306 lists them (6.8,
 * 8.8, 10.2); threads finer than 0.5 mm to the twentieth. mm. ISO 2306 from memory; the published tests hold it.
 */
export function metricDrill(d: number, P: number): number {
  const tenths = Math.round((d - P) * 1000) / 100;
  if (P < 0.5) return tenths / 10;
  const down = Math.floor(tenths);
  const rest = Math.round((tenths - down) * 100) / 100;
  const up = rest > 0.5 || (rest === 0.5 && down % 2 === 1);
  return (up ? down + 1 : down) / 10;
}

export interface InchDrill {
  name: string;
  inches: number;
}

/** Size and threads per inch → the trade's drill for about 75 % of thread. From memory; the published tests hold six of them. */
const INCH_DRILLS: ReadonlyMap<string, InchDrill> = new Map(
  (
    [
      ['2-56', '#50', 0.07],
      ['2-64', '#50', 0.07],
      ['3-48', '#47', 0.0785],
      ['3-56', '#45', 0.082],
      ['4-40', '#43', 0.089],
      ['4-48', '#42', 0.0935],
      ['5-40', '#38', 0.1015],
      ['5-44', '#37', 0.104],
      ['6-32', '#36', 0.1065],
      ['6-40', '#33', 0.113],
      ['8-32', '#29', 0.136],
      ['8-36', '#29', 0.136],
      ['10-24', '#25', 0.1495],
      ['10-32', '#21', 0.159],
      ['12-24', '#16', 0.177],
      ['12-28', '#14', 0.182],
      ['1/4-20', '#7', 0.201],
      ['1/4-28', '#3', 0.213],
      ['5/16-18', 'F', 0.257],
      ['5/16-24', 'I', 0.272],
      ['3/8-16', '5/16', 5 / 16],
      ['3/8-24', 'Q', 0.332],
      ['7/16-14', 'U', 0.368],
      ['7/16-20', '25/64', 25 / 64],
      ['1/2-13', '27/64', 27 / 64],
      ['1/2-20', '29/64', 29 / 64],
      ['9/16-12', '31/64', 31 / 64],
      ['9/16-18', '33/64', 33 / 64],
      ['5/8-11', '17/32', 17 / 32],
      ['5/8-18', '37/64', 37 / 64],
      ['3/4-10', '21/32', 21 / 32],
      ['3/4-16', '11/16', 11 / 16],
    ] as const
  ).map(([thread, name, inches]) => [thread, { name, inches }]),
);

export function inchDrill(size: string, n: number): InchDrill | null {
  return INCH_DRILLS.get(`${size}-${n}`) ?? null;
}
