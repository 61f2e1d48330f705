import type { Draws } from "../ensemble/types.ts";
import type { Result, Warning } from "../forecast/result.ts";
import { linkedCoolers } from "../trip/oneCooler.ts";
import type { Trip } from "../trip/types.ts";
import { judge, type Need, needOf } from "./need.ts";
import { overCount, wantingOf } from "./runNeed.ts";

/** What was said of a cooler while the plan was not finished: past where the finished plan holds. */
const UNFINISHED: ReadonlySet<string> = new Set(["ice-short", "way-out", "ice-run-short", "no-room-for-ice"]);
/** A guess of weight, which the packed weight of the finished plan stands in for. */
const GUESSED_WEIGHT = "heavy-cooler";

interface Cooler {
  path: string;
  index: number;
  need: Need;
  /** It does what is asked of it: no hour without ice that is wanted, and its food kept as surely as asked. */
  holds: boolean;
  /** Ice comes into it on the way. */
  isFed: boolean;
}

/**
 * Warnings of a finished plan. The ice was searched before the ice runs: what a run mends is told as resting on it, and
 * what it does not mend as what is left of it then.
 *
 * @param trip with everything planned in it
 * @param result of its middle case
 * @param draws of its members; null: there are none
 */
export function settledWarnings(
  trip: Trip,
  result: Result,
  draws: Draws | null,
  warnings: readonly Warning[],
): Warning[] {
  const coolers = trip.coolers.map((_, i) => coolerOf(trip, result, draws, i));
  const hasRunWarning = new Set(
    warnings.flatMap(({ code, path }) => (code === "ice-run-short" ? [path] : [])),
  );
  return warnings.flatMap((warning): Warning[] => {
    if (warning.code === GUESSED_WEIGHT) return [];
    const cooler = coolers.find(({ path }) => path === warning.path);
    if (cooler === undefined || !UNFINISHED.has(warning.code)) return [warning];
    if (cooler.holds) return mended(cooler, warning);
    if (warning.code !== "ice-short" || !cooler.isFed) return [warning];
    return hasRunWarning.has(warning.path) ? [] : [leftWarning(trip, result, draws, cooler)];
  });
}

function coolerOf(trip: Trip, result: Result, draws: Draws | null, index: number): Cooler {
  const need = needOf(trip, index, linkedCoolers(trip, index));
  const isFilled = need.none || judge(result, need).outcome === "holds";
  return {
    path: `coolers[${index}]`,
    index,
    need,
    holds: isFilled && wantingOf(trip, result, draws, index) === null,
    isFed: trip.ice.some(({ cooler, putIn_s }) => cooler === index && putIn_s !== null),
  };
}

function mended({ isFed, path, need }: Cooler, { code }: Warning): Warning[] {
  if (code !== "ice-short" || !isFed) return [];
  const says = `${need.cooler}: the ice of the departure alone is not enough; with what comes on the way it is`;
  return [{ code: "ice-on-way", says, path }];
}

/** What a cooler fails in with all its ice, that of the way counted. */
function leftWarning(
  trip: Trip,
  result: Result,
  draws: Draws | null,
  { index, need, path }: Cooler,
): Warning {
  const { failing } = judge(result, need);
  const over = draws === null ? 0 : overCount(trip, draws, index);
  const members = `its food passes the limit in ${over} of ${draws === null ? 0 : draws.to - draws.from} members`;
  const what = failing.length > 0 || over === 0 ? failing.join("; ") : members;
  const says = `${need.cooler}: the ice of the departure and of the way together is not enough: ${what}`;
  return { code: "ice-short", says, path };
}
