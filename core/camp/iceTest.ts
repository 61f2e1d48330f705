import { learnedAlone } from "../cooler/joinHistory.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import type { Spread } from "../matter/spread.ts";
import { fitIceTest, type IceFit, leftOver, slopes_kg } from "./fitIceTest.ts";
import { IceTestModel, type Scores, type WeighedRow, z90 } from "./iceTestModel.ts";
import type { IceTestResult, NextWeighing } from "./iceTestResult.ts";
import { grown, type Odd, oddOne } from "./oddWeighings.ts";
import type { IceTest, TestWeighing } from "./readIceTest.ts";

const hour_s = 3600;
const day_s = 86_400;
/** A band wider than this share of what was believed before says nothing that is worth keeping. Our own choice. */
const tells_frac = 0.75;
/** More things wrong than this, and it is no test. */
const mostOdd = 2;
/** A thing that went wrong may have been as large as this: it is no longer held against the fit. */
const free_kg = 50;
const swings_K = 6;
/** Ice left of which a weighing still tells, and a thing a person is asked to wait for. */
const leastLeft_frac = 0.08;
const everyHours = 6;
const nextHours_h = 120;
const courseStep_h = 3;

/** A fit with what was left out of it, and why. */
interface Settled {
  fit: IceFit;
  counted: readonly TestWeighing[];
  odd: Odd[];
}

function settled(model: IceTestModel, test: IceTest): Settled {
  const gone = new Set(grown(test.weighed, test.scale_kg));
  const odd: Odd[] = gone.size > 0 ? [{ kind: "ice grew", weighings: [...gone], score: Infinity }] : [];
  let counted = test.weighed.filter(({ index }) => !gone.has(index));
  let free: number[][] = [];
  for (;;) {
    const scatter_kg2 = model
      .scatter_kg2(counted, [0, 0])
      .map((row, i) =>
        row.map(
          (value, k) => value + free.reduce((sum, adds) => sum + free_kg ** 2 * adds[i]! * adds[k]!, 0),
        ),
      );
    const fit = fitIceTest(model, counted, scatter_kg2);
    const found = odd.length < mostOdd ? oddOne(counted, fit) : null;
    if (found === null) return { fit, counted, odd };
    const { adds, ...told } = found;
    odd.push(told);
    if (told.kind === "unlike its kind") return { fit, counted, odd };
    // Left out, or, where ice was lost at once, fitted with as large a loss as it takes.
    if (told.kind === "one weighing") {
      const at = adds.indexOf(1);
      counted = counted.filter((_, i) => i !== at);
      free = free.map((one) => one.filter((_, i) => i !== at));
    } else free.push(adds);
  }
}

/** Ice weighings that could still be made, from the last one on, for as long as there is ice to weigh. */
function chances(model: IceTestModel, { weighed }: IceTest, scores: Scores): WeighedRow[] {
  const last_s = weighed.at(-1)?.after_s ?? 0;
  const first_h = everyHours * Math.floor(last_s / hour_s / everyHours + 1);
  const rows = Array.from({ length: nextHours_h / everyHours }, (_, k): WeighedRow => {
    return { after_s: (first_h + k * everyHours) * hour_s, of: "ice" };
  });
  const [start_kg] = model.predict_kg([{ after_s: 60, of: "ice" }], scores);
  const left_kg = model.predict_kg(rows, scores);
  const end = left_kg.findIndex((kg) => kg < leastLeft_frac * start_kg!);
  return end < 0 ? rows : rows.slice(0, end);
}

/** A weighing this much better than an earlier one is worth the wait. */
const worthWaiting_frac = 0.03;

/**
 * The next weighings that narrow the conductance most, up to three, one on top of the other: each the earliest of those that
 * are about as good as the best, as long as it is worth the walk.
 */
function nextOf(model: IceTestModel, test: IceTest, { fit, counted }: Settled): NextWeighing[] {
  const rows = chances(model, test, fit.scores);
  if (rows.length === 0) return [];
  const all: WeighedRow[] = [...counted, ...rows];
  const slope_kg = slopes_kg(model, all, fit.scores);
  const scatter_kg2 = model.scatter_kg2(all, fit.scores);
  const widthWith = (places: readonly number[]): number => {
    const pick = [...places].sort((a, b) => a - b);
    const rest = pick.map((i) => pick.map((k) => scatter_kg2[i]![k]!));
    return Math.sqrt(
      leftOver(
        pick.map((i) => slope_kg[i]!),
        rest,
      )[0]![0]!,
    );
  };
  const chosen = counted.map((_, i) => i);
  const now = widthWith(chosen);
  const out: NextWeighing[] = [];
  const open = new Set(rows.map((_, k) => counted.length + k));
  while (out.length < 3 && open.size > 0) {
    const widths = [...open].map((at) => ({ at, width: widthWith([...chosen, at]) }));
    const best = Math.min(...widths.map(({ width }) => width));
    const taken = widths.find(({ width }) => width <= best * (1 + worthWaiting_frac))!;
    if (taken.width > (1 - worthWaiting_frac) * widthWith(chosen)) break;
    chosen.push(taken.at);
    open.delete(taken.at);
    out.push({ after_h: all[taken.at]!.after_s / hour_s, width_frac: taken.width / now });
  }
  return out;
}

function courseOf(model: IceTestModel, test: IceTest, fit: IceFit): IceTestResult["course"] {
  const last_h = Math.max(48, (test.weighed.at(-1)?.after_s ?? 0) / hour_s);
  const t_h = Array.from({ length: Math.ceil(last_h / courseStep_h) + 1 }, (_, k) => k * courseStep_h);
  const rows = t_h.map((h): WeighedRow => ({ after_s: h * hour_s, of: "ice" }));
  const width = Math.sqrt(fit.covariance[0]![0]!);
  const at = (score: number, body: number): number[] => model.predict_kg(rows, [score, body]);
  const [c, b] = fit.scores;
  return {
    t_h,
    ice_kg: { p10: at(c + z90 * width, b), p50: at(c, b), p90: at(c - z90 * width, b) },
    class_kg: { p10: at(z90, 0), p90: at(-z90, 0) },
  };
}

/** Share of a normal curve above a standard score, by a logistic curve; within 0.01. */
const above_frac = (score: number): number => 1 / (1 + Math.exp(1.702 * score));

function meanRoom_C({ room, weighed }: IceTest): number {
  const until_s = weighed.at(-1)?.after_s ?? Infinity;
  const own = room.filter(({ t_s }) => t_s <= until_s);
  return own.reduce((sum, { room_C }) => sum + room_C, 0) / own.length;
}

const lossIn = ({ p10, p50, p90 }: Spread, at_C: number): IceTestResult["loss_kg_per_day"] => {
  const daily_kg = (conductance_W_per_K: number): number =>
    (conductance_W_per_K * at_C * day_s) / iceLatent_J_per_kg;
  return { at_C, p10: daily_kg(p10), p50: daily_kg(p50), p90: daily_kg(p90) };
};

function weighingsOf(
  model: IceTestModel,
  test: IceTest,
  { fit, counted }: Settled,
): IceTestResult["weighings"] {
  const isCounted = new Set(counted.map(({ index }) => index));
  const fitted_kg = model.predict_kg(test.weighed, fit.scores);
  return test.weighed.map(({ after_s, of, mass_kg, index }, i) => ({
    after_h: after_s / hour_s,
    of,
    measured_kg: mass_kg,
    fitted_kg: fitted_kg[i]!,
    residual_kg: mass_kg - fitted_kg[i]!,
    isCounted: isCounted.has(index),
  }));
}

function oddsOf(test: IceTest, odd: readonly Odd[]): IceTestResult["odd"] {
  const all: { kind: Odd["kind"] | "swings"; weighings: number[] }[] = [...odd, ...swingOf(test)];
  return all.map(({ kind, weighings }) => ({ kind, weighings, says: oddSays(kind, weighings, test) }));
}

/** What was fitted, without what is made of it. */
export interface IceTestFit extends Settled {
  model: IceTestModel;
  before_W_per_K: Spread;
  after_W_per_K: Spread;
  /** The band is narrower by so much that it is worth keeping. */
  tells: boolean;
}

/** The fit alone: conductance before and after, and what is odd. @throws ModelError when no step settles */
export function fitOf(test: IceTest): IceTestFit {
  const model = new IceTestModel(test);
  const whole = settled(model, test);
  const width = Math.sqrt(whole.fit.covariance[0]![0]!);
  return {
    ...whole,
    model,
    before_W_per_K: model.conductanceBand_W_per_K(0, 1),
    after_W_per_K: model.conductanceBand_W_per_K(whole.fit.scores[0], width),
    tells: whole.counted.length > 0 && width <= tells_frac,
  };
}

/**
 * What a home ice test teaches of a cooler: its whole conductance and the heat of its body, by fitting the transient model of
 * the trips to what was weighed, with the band of its kind as prior. It says which weighing does not fit, whether the test
 * tells anything, and which weighing would tell most next. Without a weighing it is the plan of a test.
 *
 * Limits: see `fitIceTest` and `oddOne`; the room is taken as it was read, within 1 K.
 *
 * @throws ModelError when no step settles
 */
export function iceTest(test: IceTest): IceTestResult {
  const whole = fitOf(test);
  const { model, fit, tells, before_W_per_K, after_W_per_K } = whole;
  const weighings = weighingsOf(model, test, whole);
  const bodyWidth = Math.sqrt(fit.covariance[1]![1]!);
  return {
    coldstow: 1,
    command: "icetest",
    test: {
      title: test.title,
      ended: test.ended,
      cooler: test.trip.coolers[0]!.name,
      ice_kg: test.trip.ice.reduce((sum, { mass_kg }) => sum + mass_kg, 0),
    },
    assumed: [...test.assumed],
    class_W_per_K: { ...before_W_per_K },
    conductance_W_per_K: { ...after_W_per_K },
    body_kJ_per_K: { ...model.bodyBand_kJ_per_K(fit.scores[1], bodyWidth) },
    loss_kg_per_day: lossIn(after_W_per_K, meanRoom_C(test)),
    better_frac: tells ? above_frac(fit.scores[0]) : null,
    tells,
    weighings,
    residual_kg: weighings.map(({ residual_kg }) => residual_kg),
    odd: oddsOf(test, whole.odd),
    course: courseOf(model, test, fit),
    next: nextOf(model, test, whole),
    learned_W_per_K: tells ? learnedAlone(before_W_per_K, after_W_per_K) : null,
  };
}

function swingOf({ room }: IceTest): { kind: "swings"; weighings: number[] }[] {
  const values = room.map(({ room_C }) => room_C);
  return Math.max(...values) - Math.min(...values) > swings_K ? [{ kind: "swings", weighings: [] }] : [];
}

/** What is odd and what may be behind it, in a sentence. */
function oddSays(kind: Odd["kind"] | "swings", places: readonly number[], { weighed }: IceTest): string {
  const at = places
    .map((place) => weighed.find(({ index }) => index === place)!)
    .map(({ after_s }) => `${Number((after_s / hour_s).toFixed(1))} h`);
  const first = at[0] ?? "";
  if (kind === "ice grew")
    return `The weight after ${at.join(", ")} is more than an earlier one. Ice cannot grow back: left out. Put it right?`;
  if (kind === "one weighing")
    return `The weighing after ${first} does not fit the others: left out. Misread, or the scale stood uneven?`;
  if (kind === "lost at once")
    return `Ice was lost at once before ${first}, more than a shut lid lets in. Lid left open, or ice taken out? It is not held against the cooler.`;
  if (kind === "came back")
    return `From ${first} on there is more ice than the weighings before lead to. Was some added, or did the scale's zero move? It is not held against the fit.`;
  if (kind === "swings")
    return `The room swung by more than ${swings_K} K. It is reckoned as it was read; a steadier room tells more.`;
  return "As a whole it lies far outside of what coolers of this kind do. Is the build, the size, the room or the first weight of the ice right?";
}
