import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseDocument } from "yaml";
import { forecast } from "../../core/forecast/forecast.ts";
import { judge, needOf } from "../../core/plan/need.ts";
import { iceWords, lessOne } from "../../core/plan/offer.ts";
import type { WholePlan } from "../../core/plan/wholePlan.ts";
import { linkedCoolers } from "../../core/trip/oneCooler.ts";
import type { Trip } from "../../core/trip/types.ts";
import { plannedTripText } from "./plannedTrip.ts";
import { planText } from "./provePlan.ts";
import { runs } from "./runs.ts";

/*
 * Least ice, in the world that the search was held to: the middle case. Take away any one piece that the plan added and one
 * of the coolers that held holds no more. A cooler that does not hold has the best that fits instead, and says so.
 */

const examples = new URL("../../examples/", import.meta.url);

/** The trip that the ice of the departure was sought for: without what was decided afterwards. */
function before({ planned }: WholePlan): Trip {
  const { trip, events, ice } = planned;
  const later = new Set(ice.filter(({ putIn_s }) => putIn_s !== null));
  return {
    ...trip,
    ice: trip.ice.filter((lot) => !later.has(lot)),
    events: trip.events.filter((event) => !events.includes(event)),
  };
}

/** Coolers that hold in the middle case. */
function holding(trip: Trip): number[] {
  const { result } = forecast(trip, { effects: false });
  return trip.coolers.flatMap((_, i) => {
    const need = needOf(trip, i, linkedCoolers(trip, i));
    return !need.none && judge(result, need).outcome === "holds" ? [i] : [];
  });
}

/** Lots that were lessened, so that it is seen that some were. */
let nAsked = 0;

/** Planned pieces that could have stayed away, in words. */
function spare(plan: WholePlan): string[] {
  const trip = before(plan);
  const held = holding(trip);
  const added = plan.planned.ice.filter(({ putIn_s }) => putIn_s === null);
  const asked = added.filter(({ cooler }) => held.includes(cooler));
  nAsked += asked.length;
  return asked.flatMap((lot) => {
    const ice = trip.ice.flatMap((one) => (one === lot ? lessOne(lot) : [one]));
    const still = new Set(holding({ ...trip, ice }));
    const name = trip.coolers[lot.cooler]!.name;
    return held.every((cooler) => still.has(cooler)) ? [`one of ${iceWords([lot])} in ${name}`] : [];
  });
}

/** Coolers that the plan added ice to though they do not hold, and of which it does not say why. */
function untold(plan: WholePlan): string[] {
  const trip = before(plan);
  const held = new Set(holding(trip));
  const { warnings } = plan.forecast.result;
  const added = plan.planned.ice.filter(({ putIn_s }) => putIn_s === null);
  const short = [...new Set(added.map(({ cooler }) => cooler))].filter((cooler) => !held.has(cooler));
  return short.flatMap((i) => {
    const told = warnings.some(
      ({ code, path }) => path === `coolers[${i}]` && (code === "ice-short" || code === "does-not-fit"),
    );
    return told ? [] : [trip.coolers[i]!.name];
  });
}

/** The same file with no ice in it: everything is then left to the plan. */
function bare(text: string): string {
  const file = parseDocument(text);
  file.delete("ice");
  return file.toString();
}

const cases = [
  ...readdirSync(examples)
    .filter((name) => name.endsWith(".yaml"))
    .flatMap((name) => {
      const text = readFileSync(new URL(name, examples), "utf8");
      return [
        { what: name, text },
        ...(/^ice:/m.test(text) ? [{ what: `${name} without its ice`, text: bare(text) }] : []),
      ];
    }),
  ...Array.from({ length: runs(6).numRuns }, (_, i) => {
    const number = runs(6).seed + i;
    return { what: `trip ${number}`, text: plannedTripText(number) };
  }),
];

describe("of the ice that a plan adds in the middle case", () => {
  it.each(cases)(
    "no piece can be left out: $what",
    async ({ text }) => {
      const { plan } = await planText(text, { members: 0, seed: 1 });
      expect({ spare: spare(plan), untold: untold(plan) }).toEqual({ spare: [], untold: [] });
    },
    300_000,
  );

  it("some was there to be left out", () => {
    expect(nAsked).toBeGreaterThan(cases.length);
  });
});
