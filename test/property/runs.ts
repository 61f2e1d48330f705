/** Numbers that a law is tried with: fixed, so that a run repeats; `PROPERTY_RUNS=20 PROPERTY_SEED=7` tries 20 times as many others. */
export function runs(count: number): { numRuns: number; seed: number } {
  const { PROPERTY_RUNS, PROPERTY_SEED } = process.env;
  return { numRuns: Math.ceil(count * Number(PROPERTY_RUNS ?? 1)), seed: Number(PROPERTY_SEED ?? 1907) };
}
