/**
 * The random cases are the same in every run, so that no test passes by luck; `SEED=1` and so on for others.
 */
import fc from 'fast-check';

fc.configureGlobal({ seed: 20260502 + Number(process.env.SEED ?? 0) });
