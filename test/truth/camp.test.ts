// Coverage of the forecast after looks into the coolers. Truths are worlds drawn from the priors, looks err as `lookErrors`
// says; the band of the end of the ice must then hold the truth eight times in ten, whatever was seen. No number here is
// measured in a camp: it proves the weighing, not the priors.
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { glanceError_frac, levelBounds_frac, lookErrors } from "../../core/camp/likelihood.ts";
import type { IceLevel } from "../../core/camp/logFile.ts";
import type { Look } from "../../core/camp/looks.ts";
import { predictions } from "../../core/camp/predict.ts";
import { type Weighed, weighLooks } from "../../core/camp/weighLooks.ts";
import { weightedQuantile } from "../../core/camp/weights.ts";
import { normalQuantile } from "../../core/ensemble/normalQuantile.ts";
import { runMembers } from "../../core/ensemble/runMembers.ts";
import { spreadOver } from "../../core/ensemble/spread.ts";
import type { Draws, MemberTask } from "../../core/ensemble/types.ts";
import { forecast } from "../../core/forecast/forecast.ts";
import { readTrip } from "../../core/trip/readTrip.ts";
import { runTask } from "../../core/whatif/runTask.ts";

const nTruths = 200;
const file = "desert-river.yaml";
const reading = readTrip(readFileSync(new URL(`../../examples/${file}`, import.meta.url), "utf8"), { file });
if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
const { trip } = reading;
const times_h = forecast(trip, { effects: false }).result.coolers.map(({ series }) => series.t_h);

/** Evenly spread numbers inside 0…1, always the same ones: a plain congruential generator. */
let state = 20_270_610;
function chance(): number {
  state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
  return (state + 0.5) / 2 ** 32;
}

const levels = Object.entries(levelBounds_frac) as [IceLevel, readonly [number, number]][];

/** What somebody says who looks at this share of ice. */
function glance(ice_frac: number): IceLevel {
  if (chance() < lookErrors.wrong_frac) return levels[Math.floor(chance() * levels.length)]![0];
  const judged = ice_frac + glanceError_frac(ice_frac) * normalQuantile(chance());
  return levels.find(([, [low, high]]) => judged >= low && judged < high)![0];
}

function dailyLooks(truth: Draws): Look[] {
  const looks: Look[] = [];
  for (let t_s = 23 * 3600; t_s < trip.duration_s; t_s += 86_400)
    trip.coolers.forEach((_, cooler) => {
      const look = { entry: { id: `${t_s}-${cooler}` }, t_s, cooler, of: "ice", level: "full" } as Look & {
        of: "ice";
      };
      const ice_frac = predictions(look, truth.series![cooler]!, times_h[cooler]!, 1)[0]!;
      if (!Number.isNaN(ice_frac)) looks.push({ ...look, level: glance(ice_frac) });
    });
  return looks;
}

/** Runs each task of drawn members once, for all truths are forecast with the same ones. */
const known = new Map<number, Draws>();
const run = spreadOver([
  {
    run: async (task: MemberTask) => {
      if (task.scores !== undefined) return runTask([trip], task);
      if (!known.has(task.from)) known.set(task.from, runTask([trip], task));
      return known.get(task.from)!;
    },
  },
]);

const band = ({ draws, coolers }: Weighed, cooler: number): (number | null)[] =>
  [0.1, 0.9].map((p) => weightedQuantile(draws.coolers[cooler]!.iceCarriedOn_h, coolers[cooler]!.weights, p));

it("after a look a day the band still holds 80 ± 5 % of drawn truths, and is narrower", async () => {
  let [held, all] = [0, 0];
  const widths: { before: number; after: number }[] = [];
  const truths = runMembers(trip, { from: 50_000, to: 50_000 + nTruths, seed: 77, series: true });
  for (let k = 0; k < nTruths; k++) {
    const alone = { ...truths, series: truths.series!.map((own) => memberOf(own, k)) };
    const learned = await weighLooks(trip, dailyLooks(alone), times_h, run, {
      members: 256,
      seed: 1,
      nRefreshes: 0,
    });
    trip.coolers.forEach((_, cooler) => {
      const truth_h = truths.coolers[cooler]!.iceCarriedOn_h[k]!;
      const [p10, p90] = band(learned, cooler);
      all++;
      if (truth_h >= p10! && truth_h <= p90!) held++;
      const even = new Float64Array(256).fill(1 / 256);
      const { iceCarriedOn_h } = learned.draws.coolers[cooler]!;
      const [from, to] = [0.1, 0.9].map((p) => weightedQuantile(iceCarriedOn_h, even, p)!);
      widths.push({ before: to! - from!, after: p90! - p10! });
    });
  }
  const share = held / all;
  console.log(`held ${held} of ${all} = ${(100 * share).toFixed(1)} %`);
  expect(share).toBeGreaterThan(0.75);
  expect(share).toBeLessThan(0.85);
  const narrower = widths.map(({ before, after }) => after / before).sort((a, b) => a - b);
  const median = narrower[Math.floor(narrower.length / 2)]!;
  console.log(`median width after / before: ${median.toFixed(2)}`);
  expect(median).toBeLessThan(0.85);
}, 600_000);

/** The series of one member alone. */
function memberOf(own: NonNullable<Draws["series"]>[number], member: number): typeof own {
  return Object.fromEntries(
    Object.entries(own).map(([key, series]) => [
      key,
      { ...series, bins: series.bins.slice(member * series.nMoments, (member + 1) * series.nMoments) },
    ]),
  ) as typeof own;
}
