import { changedCoolers, withFresh } from "../ensemble/partDraws.ts";
import type { Draws } from "../ensemble/types.ts";
import { withBands } from "../ensemble/withBands.ts";
import { forecast } from "../forecast/forecast.ts";
import type { PlanResult } from "../forecast/planResult.ts";
import type { Warning } from "../forecast/result.ts";
import type { Forecast } from "../forecast/types.ts";
import { liftAdvice } from "../safety/lifting.ts";
import { linkedCoolers } from "../trip/oneCooler.ts";
import type { Trip } from "../trip/types.ts";
import { allergenRows } from "./allergens.ts";
import { amountsOf } from "./amounts.ts";
import { type Assigned, assignFood } from "./assign/assignFood.ts";
import type { Solve } from "./assign/solver.ts";
import { budgetOf } from "./budget.ts";
import { countdown } from "./countdown.ts";
import { drinkAdvice } from "./drinks.ts";
import { type IceRunProposal, proposeIceRuns } from "./iceRuns.ts";
import type { Aim } from "./leastPieces.ts";
import { type MergeProposal, proposeMerges } from "./merges.ts";
import { failuresOf, judge, needOf } from "./need.ts";
import { packMap } from "./packMap/packMap.ts";
import { type IcePlan, planIce } from "./planIce.ts";
import type { Planned } from "./plannedFile.ts";
import { pullCards } from "./pull.ts";
import { settledWarnings } from "./settledWarnings.ts";
import { type Standing, standingOf } from "./standing.ts";
import { type DecidedStates, decideStates } from "./states.ts";
import { type SureOptions, surePlan, sureWarning } from "./surePlan.ts";
import { sureWays } from "./sureWays.ts";
import type { ProposeOptions } from "./trials.ts";
import { warmLoadPlan } from "./warmLoad.ts";

export interface WholeOptions {
  aim: Aim;
  /** Runs that the bands come from; 0: the middle case alone. */
  members: number;
  seed: number;
  solve: Solve;
  /**
   * Runs the first members of the trip as planned so far: as many as said without series, or all of them with. Of the coolers
   * that are not asked for, no numbers are needed.
   */
  draw: (planned: Planned, count: number | "all", only?: readonly number[]) => Promise<Draws>;
  onProgress?: (done_frac: number, says: string) => void;
  signal?: { readonly aborted: boolean };
}

/** A trip with everything decided that its file left open. */
export interface WholePlan {
  planned: Planned;
  /** The forecast of the planned trip, with `result.plan` filled in. */
  forecast: Forecast;
  /** The food keeps within its limit at the trip's confidence, the ice lasts in the middle case, and everything fits. */
  holds: boolean;
}

/** Members for what is only compared: differences over the same members settle sooner than what they differ by. */
const MOST_COMPARED = 32;

/**
 * Decides whatever a trip file leaves open, in this order: what is frozen, what goes into which cooler, how much ice, which
 * ice is fetched on the way, which coolers are merged; then works out how it is packed, prepared and used. What the file
 * says stays as it is. The forecast is that of the finished plan.
 *
 * @throws Cancelled when the signal is given
 */
export async function wholePlan(trip: Trip, options: WholeOptions): Promise<WholePlan> {
  const states = decideStates(trip);
  const assigned = await assignFood(states.trip, { ...hooksOf(options), solve: options.solve });
  const ice = await iceFor(assigned.trip, options);
  const proposing = {
    ...hooksOf(options),
    members: Math.min(options.members, MOST_COMPARED),
    seed: options.seed,
  };
  let planned = withIce({ trip: assigned.trip, ice: [], events: [] }, ice.plan.addedIce);
  const runs = proposeIceRuns(planned.trip, proposing);
  planned = withIce(planned, runs.ice);
  const merges = proposeMerges(planned.trip, proposing);
  if (merges.events.length > 0) {
    const events = [...planned.trip.events, ...merges.events].sort((a, b) => a.t_s - b.t_s);
    planned = { ...planned, trip: { ...planned.trip, events }, events: merges.events };
  }
  const isSame = runs.ice.length === 0 && merges.events.length === 0;
  const draws = isSame || ice.draws === null ? ice.draws : await drawnAgain(planned, ice, options);
  const middle = forecast(planned.trip, options.signal === undefined ? {} : { signal: options.signal });
  const standing = draws === null ? null : standingOf(planned.trip, draws, middle);
  const told = toldOf(middle, ice.forecast, { draws, standing, isSame }, options);
  const all = filled(planned, told, { states, assigned, runs, merges }, proposing);
  const settled = settledWarnings(planned.trip, middle.result, draws, all.result.warnings);
  const ways = standing === null ? [] : sureWays(planned.trip, standing, settled, proposing);
  const whole = { ...all, result: { ...all.result, warnings: [...settled, ...ways] } };
  return { planned, forecast: whole, holds: isHolding(planned.trip, middle, whole) };
}

type Hooks = Pick<WholeOptions, "onProgress" | "signal">;

const hooksOf = ({ onProgress, signal }: WholeOptions): Hooks => ({
  ...(onProgress === undefined ? {} : { onProgress }),
  ...(signal === undefined ? {} : { signal }),
});

/** Members of the plan with its ice runs and merges; of coolers that neither concerns, they are known. */
async function drawnAgain(
  planned: Planned,
  { forecast: { trip }, draws }: { forecast: Forecast; draws: Draws | null },
  { draw }: WholeOptions,
): Promise<Draws> {
  const only = changedCoolers(trip, planned.trip);
  return withFresh(planned.trip, draws!, await draw(planned, "all", only), only);
}

async function iceFor(
  trip: Trip,
  options: WholeOptions,
): Promise<{ plan: IcePlan; forecast: Forecast; draws: Draws | null }> {
  const { aim, members, seed, draw } = options;
  // What each assumption does is told once, of the finished plan.
  const search = { aim, effects: false, ...hooksOf(options) };
  if (members === 0) {
    const plan = planIce(trip, search);
    return { plan, forecast: plan.forecast, draws: null };
  }
  const bare: Planned = { trip, ice: [], events: [] };
  const drawWith: SureOptions["draw"] = (ice, count, only) => draw(withIce(bare, ice), count, only);
  return surePlan(trip, { ...search, members, seed, draw: drawWith });
}

function withIce(planned: Planned, ice: Planned["ice"]): Planned {
  const { trip } = planned;
  return { ...planned, trip: { ...trip, ice: [...trip.ice, ...ice] }, ice: [...planned.ice, ...ice] };
}

/** The finished plan's own forecast; what was said of the ice search stays as far as it still holds. */
function toldOf(
  middle: Forecast,
  before: Forecast,
  { draws, standing, isSame }: { draws: Draws | null; standing: Standing | null; isSame: boolean },
  { seed }: WholeOptions,
): Forecast {
  const told = draws === null ? middle : withBands(middle, draws, seed);
  const own = new Set(told.result.warnings.map(({ code, path }) => `${code} ${path}`));
  const searched = before.result.warnings.filter(
    ({ code, path }) => !own.has(`${code} ${path}`) && (isSame || isOfSearch(code)),
  );
  // Ice runs and merges change how sure it is.
  const sure = draws === null || isSame ? [] : [sureWarning(middle.trip, draws, standing!)];
  const warnings = [...sure, ...searched, ...told.result.warnings];
  const result = { ...told.result, command: "plan" as const, warnings, plan: before.result.plan! };
  return { ...told, result };
}

/** Warnings that a search gives and a forecast does not. What was said of an ice plan without its ice runs is past. */
const isOfSearch = (code: string): boolean =>
  code.startsWith("ice-") ||
  code.startsWith("supply") ||
  code.startsWith("freezer") ||
  code === "dry-ice-supply";

interface Parts {
  states: DecidedStates;
  assigned: Assigned;
  runs: IceRunProposal;
  merges: MergeProposal;
}

function filled({ trip }: Planned, told: Forecast, parts: Parts, compared: ProposeOptions): Forecast {
  const { states, assigned, runs, merges } = parts;
  const before = told.result.plan!;
  const map = packMap(trip, told);
  const prep = countdown(trip, { ice: before.ice, states: states.states });
  const load = warmLoadPlan(trip, told, compared);
  const plan: PlanResult = {
    ...before,
    assign: assigned.assign,
    otherwise: assigned.otherwise,
    states: states.states,
    layers: map.layers,
    prep: prep.prep,
    iceRuns: runs.iceRuns,
    merges: merges.merges,
    pull: pullCards(trip, told),
    drinks: drinkAdvice(trip, told),
    lifts: trip.coolers.map(({ name, body }, i) =>
      liftAdvice(name, told.result.coolers[i]!.packedWeight_kg, body),
    ),
    warmLoad: load,
    amounts: amountsOf(trip),
    allergens: allergenRows(trip),
    waysOut: assigned.waysOut,
    budget: budgetOf(trip, [...before.ice, ...runs.iceRuns]),
  };
  const further: readonly Warning[] = [
    ...states.warnings,
    ...assigned.warnings,
    ...unusedWarnings(trip),
    ...runs.warnings,
    ...merges.warnings,
    ...map.warnings,
    ...prep.warnings,
  ];
  return { ...told, result: { ...told.result, plan, warnings: [...told.result.warnings, ...further] } };
}

/** A cooler that nothing goes into may stay at home. */
function unusedWarnings(trip: Trip): Warning[] {
  return trip.coolers.flatMap(({ name }, i) => {
    const isUsed = [...trip.food, ...trip.ice].some(({ cooler }) => cooler === i);
    const joins = trip.events.some((event) => event.do === "merge" && event.into === i);
    if (isUsed || joins || trip.warmLoad?.cooler === i) return [];
    const says = `${name}: nothing goes into it by this plan. It can stay at home, or be kept for more room`;
    return [{ code: "cooler-unused", says, path: `coolers[${i}]` }];
  });
}

/** Whether the finished plan does what was asked; the ice is judged in the middle case, the food at the confidence. */
function isHolding(trip: Trip, middle: Forecast, told: Forecast): boolean {
  const lasts = trip.coolers.every((_, i) => {
    const need = needOf(trip, i, linkedCoolers(trip, i));
    return need.none || judge(middle.result, need).outcome === "holds";
  });
  return lasts && failuresOf(told.result).length === 0;
}
