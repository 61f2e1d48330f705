import highs from "highs";
import { ModelError } from "../../quantity/errors.ts";

/** What a solver found for a linear program in LP text. */
export interface Solution {
  /** Value of every column, by name. */
  values: ReadonlyMap<string, number>;
  /** How far the objective may be from the best one, relative to it. */
  gap_frac: number;
}

/** The package's types describe its CommonJS face; as a module its default is the loader itself. */
const load = highs as unknown as typeof highs.default;

/** Solves a mixed-integer linear program that is known to have an answer. */
export type Solve = (lp: string) => Promise<Solution>;

/** An answer this close to the best is taken. */
const gap_frac = 0.01;
/**
 * Programs of this size and kind are solved in some ten nodes whichever way; most of the time would go into collecting
 * thousands of cuts of which a few dozen are used, and into trying out branches. Measured on the menus of `bench/assign.ts`
 * and the examples: half the time or less.
 */
const options = { mip_pool_soft_limit: 60, mip_pscost_minreliable: 0 } as const;
/** Ends a search that does not come together after the same work on every machine; a time would not. */
const mostNodes = 4000;

/**
 * A solver on HiGHS, loaded once. Answers depend on the text alone.
 *
 * @param locateFile where a page keeps `highs.wasm`; left out, it is found beside the package
 * @throws ModelError when the text is not a linear program or no answer is found: our bug, since every model here has one
 */
export async function highsSolver(locateFile?: (file: string) => string): Promise<Solve> {
  const engine = await load(locateFile === undefined ? {} : { locateFile });
  return async (lp) =>
    engine.withModel({ format: "lp", data: lp }, (model) => {
      model.options.set("mip_rel_gap", gap_frac);
      model.options.set("mip_max_nodes", mostNodes);
      model.options.set(options);
      model.run();
      const { colValue } = model.getSolution();
      // A text that is not understood does not throw: it leaves nothing to solve.
      if (colValue.length === 0) throw new ModelError("the solver read no columns", colValue.length);
      const { primal, mip } = {
        primal: model.info.get("primal_solution_status"),
        mip: model.info.get("mip_gap"),
      };
      if (Number(primal) !== 2) throw new ModelError("the solver found no answer", Number(primal));
      const values = new Map<string, number>();
      colValue.forEach((value, i) => {
        values.set(model.getColName(i), value);
      });
      const gap = Number(mip);
      return { values, gap_frac: Number.isFinite(gap) ? Math.max(0, gap) : 0 };
    });
}
