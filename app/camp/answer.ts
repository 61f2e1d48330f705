import type { IceLevel } from "../../core/index.ts";
import type { Logged } from "../worker/logAsks.ts";
import { type CampPlan, placeAt } from "./keptPlan.ts";

/** What an entry changes, as the answer screen shows it. */
export interface CampAnswer {
  /** One sentence: what is different now. */
  says: string;
  /** The one thing to do now; null: nothing is known to be better than going on. */
  now: string | null;
  /** An SVG; null: there is none. */
  picture: string | null;
}

/** How much of the most ice a picture stands for; it is looked at, not weighed, so the half step around it is meant too. */
const shares: Readonly<Record<IceLevel, readonly [number, number]>> = {
  full: [0.875, 1],
  "3/4": [0.625, 0.875],
  "1/2": [0.375, 0.625],
  "1/4": [0.125, 0.375],
  slush: [0.01, 0.125],
  water: [0, 0.01],
};

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/**
 * What was logged beside what the plan foresaw for this hour. It does not reckon anew: the end of the ice as the plan
 * told it still stands in Decide, and this says whether to believe it.
 *
 * @param plan null: nothing was planned on this device
 * @param depart_ms departure, from which the plan counts
 */
export function answerTo(made: readonly Logged[], plan: CampPlan | null, depart_ms: number): CampAnswer {
  const look = made.find(({ file }) => "ice" in file);
  const series = plan?.coolers.find(({ name }) => name === look?.cooler);
  const said = made.map(({ cooler, says }) => `${cooler ?? "Trip"}: ${says}.`).join(" ");
  if (look === undefined) return { says: said, now: null, picture: null };
  if (series === undefined)
    return { says: `${said} There is no plan on this phone to hold it against.`, now: null, picture: null };
  const place = placeAt(series.t_h, (look.at_ms - depart_ms) / 3_600_000);
  const most = Math.max(...series.ice_kg.p50.slice(0, place + 1));
  const [low, likely, high] = [series.ice_kg.p10, series.ice_kg.p50, series.ice_kg.p90].map((band) =>
    most > 0 ? band[place]! / most : 0,
  ) as [number, number, number];
  const [least, atMost] = shares[(look.file as { ice: IceLevel }).ice];
  const range = low === high ? "one typical run, no range yet" : `${percent(low)} to ${percent(high)}`;
  const foreseen = `The plan foresaw likely ${percent(likely)} of the most it held (${range}).`;
  if (atMost < low)
    return {
      says: `${look.cooler}: less ice than planned. ${foreseen}`,
      now: "Shade it, open it less, and count on ice or a merge sooner.",
      picture: null,
    };
  if (least > high)
    return { says: `${look.cooler}: more ice than planned. ${foreseen}`, now: null, picture: null };
  return { says: `${look.cooler}: as planned. ${foreseen}`, now: null, picture: null };
}
