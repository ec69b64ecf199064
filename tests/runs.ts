/** So many random cases of a property each time; `RUNS=10` for ten times as many, `SEED=1` and so on for others. */
export const runs = (count: number): number => count * Number(process.env.RUNS ?? 1);
