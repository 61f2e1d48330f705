import wasm from "highs/runtime?url";
import {
  type Aim,
  answerOf,
  bookPictures,
  coldStair,
  coldStairData,
  compare,
  compareBands,
  compareRows,
  coolerMoment,
  coolerStrip,
  coolerStripData,
  doubtBars,
  drainBands,
  type Forecast,
  foodClock,
  foodClockData,
  forecastProblems,
  habitLadder,
  habits,
  habitsText,
  highsSolver,
  iceBand,
  iceBandData,
  joinDraws,
  mergeCurves,
  mergeCurvesData,
  momentSaid,
  openings_h,
  type Planned,
  type Problem,
  packSection,
  pairWords,
  planCalendar,
  plannedFile,
  planText,
  type RunHooks,
  readTrip,
  riskWords,
  type Solve,
  section,
  stress,
  stressGrid,
  stressText,
  type Trip,
  type TripSource,
  tasksFor,
  tripBook,
  type UnitSystem,
  unitsOf,
  type WholeOptions,
  type WholePlan,
  wholePlan,
  whysOf,
} from "../../core/index.ts";
import type {
  Asked,
  CompareView,
  MomentView,
  PlanBeside,
  PlanPictures,
  PlanView,
  ReckonAnswers,
  ReckonAsk,
  Said,
  Study,
} from "./asks.ts";
import { MemberPool } from "./memberPool.ts";

// Runs what takes long. It keeps the last plan, so that other units, the book and the calendar cost no second one.
declare const self: DedicatedWorkerGlobalScope;

/** Seed of every draw here: the same trip gives the same answer, and that of the command line. */
const SEED = 1;

let pool: MemberPool | null = null;
let solver: Promise<Solve> | null = null;
let last: { forecast: Forecast; file: string; holds: boolean; members: number } | null = null;

class Refused extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super("the trip has mistakes");
    this.problems = problems;
  }
}

self.addEventListener("message", async ({ data: { id, ask } }: MessageEvent<Asked<ReckonAsk>>) => {
  const say = (said: Said): void => self.postMessage(said);
  const tell = (done_frac: number, says: string): void => say({ id, done_frac, says });
  try {
    say({ id, answer: await answered(ask, tell) });
  } catch (error) {
    if (error instanceof Refused) say({ id, problems: error.problems });
    else say({ id, fault: error instanceof Error ? error.message : String(error) });
  }
});

type Tell = (done_frac: number, says: string) => void;

function answered(
  ask: ReckonAsk,
  tell: Tell,
): Promise<ReckonAnswers[ReckonAsk["do"]]> | PlanView | MomentView | string {
  switch (ask.do) {
    case "plan":
      return plan(ask, tell);
    case "beside":
      return beside(ask, tell);
    case "compare":
      return compared(ask, tell);
    case "moment":
      return moment(ask);
    case "show":
      return shown(ask.units, ask.width);
    case "book":
      return book(ask);
    case "calendar":
      return planCalendar(lastPlan().forecast, ask.now_s);
    case "habits":
    case "stress":
      return study(ask, tell);
  }
}

function lastPlan(): NonNullable<typeof last> {
  if (last === null) throw new Error("nothing has been planned yet");
  return last;
}

function tripOf(text: string): Trip {
  const reading = readTrip(text, { file: "trip" });
  if (!reading.ok) throw new Refused(reading.problems);
  return reading.trip;
}

function runnersOf(...texts: readonly string[]): MemberPool {
  const sources = texts.map((text): TripSource => ({ text, file: "trip", beside: [] }));
  if (pool === null) pool = new MemberPool(sources);
  else pool.take(sources);
  return pool;
}

interface PlanOrder {
  text: string;
  members: number;
  aim: Aim;
}

interface Made {
  whole: WholePlan;
  file: string;
}

async function made({ text, members, aim }: PlanOrder, tell: Tell): Promise<Made> {
  const trip = tripOf(text);
  solver ??= highsSolver(() => wasm);
  const says = members === 0 ? "middle case" : `tried on ${members} members`;
  const fileOf = (planned: Planned): string =>
    plannedFile(text, trip, planned, unitsOf(text), `Added by coldstow plan, aim: ${aim}; ${says}.`);
  const draw: WholeOptions["draw"] = async (planned, count, only) => {
    const isAll = count === "all";
    const { run } = runnersOf(fileOf(planned));
    return joinDraws(await run(tasksFor(0, null, isAll ? members : count, SEED, isAll, only), weeks(tell)));
  };
  const options = { aim, members, seed: SEED, solve: await solver, draw, onProgress: tell };
  const whole = await wholePlan(trip, options);
  return { whole, file: fileOf(whole.planned) };
}

const weeks = (tell: Tell): RunHooks => ({ onProgress: (done_frac) => tell(done_frac, "weeks like yours") });

async function plan(ask: Extract<ReckonAsk, { do: "plan" }>, tell: Tell): Promise<PlanView> {
  const { members } = ask;
  const { whole, file } = await made(ask, tell);
  const { run } = runnersOf(file);
  const forecast = await drainBands(whole.forecast, run, { members, seed: SEED, ...weeks(tell) });
  last = { forecast, file, holds: whole.holds, members };
  return shown(ask.units, ask.width);
}

async function beside(order: PlanOrder, tell: Tell): Promise<PlanBeside> {
  const { whole, file } = await made(order, tell);
  return { file, holds: whole.holds };
}

async function compared(
  { files, members, units, width }: Extract<ReckonAsk, { do: "compare" }>,
  tell: Tell,
): Promise<CompareView> {
  // Plans of one trip have one title: what tells them apart is what was changed.
  const trips = files.map(({ says, text }) => ({ trip: { ...tripOf(text), title: says }, file: "" }));
  const { run } = runnersOf(...files.map(({ text }) => text));
  const result = await compare(trips, run, { members, seed: SEED, ...weeks(tell) });
  return {
    picture: compareBands(result, { width, units, id: "compare" }),
    rows: compareRows(result.trips, units),
    risks: result.trips.map(riskWords),
    pairs: result.pairs.map(pairWords),
  };
}

function moment({ cooler, t_h, units, width }: Extract<ReckonAsk, { do: "moment" }>): MomentView {
  const now = coolerMoment(lastPlan().forecast, cooler, t_h);
  return { picture: section(now, { units, width, id: `cut${cooler}` }), says: momentSaid(now) };
}

function shown(units: UnitSystem, width: number): PlanView {
  const { forecast, file, holds, members } = lastPlan();
  return {
    result: forecast.result,
    answer: answerOf(forecast, { units }),
    whys: whysOf(forecast, { units }),
    openings_h: forecast.trip.coolers.map((_, i) => openings_h(forecast, i)),
    pictures: picturesOf(forecast, units, width),
    text: planText(forecast, { units }),
    file,
    holds,
    members,
  };
}

function picturesOf(forecast: Forecast, units: UnitSystem, width: number): PlanPictures {
  const { trip, result } = forecast;
  const each = <T>(draw: (i: number, id: string) => T): T[] => trip.coolers.map((_, i) => draw(i, `c${i}`));
  const layers = result.plan!.layers;
  return {
    strip: coolerStrip(coolerStripData(forecast), { width, units, id: "strip" }),
    merges: (result.plan?.merges ?? []).map((_, i) =>
      mergeCurves(mergeCurvesData(forecast, i), { width, units, id: `merge${i}` }),
    ),
    food: foodClock(foodClockData(forecast), { width, units, id: "food" }),
    ice: each((i, id) => iceBand(iceBandData(forecast, i), { width, units, id: `ice-${id}` })),
    cold: each((i, id) => coldStair(coldStairData(forecast, i), { width, units, id: `cold-${id}` })),
    doubts: each((i, id) => doubtBars(forecast, i, { width, units, id: `doubts-${id}` })),
    pack: each((i, id) => packed(forecast, i, { width, units, id: `pack-${id}` })),
  };

  function packed(
    { trip: packedTrip }: Forecast,
    i: number,
    options: { width: number; units: UnitSystem; id: string },
  ): string | null {
    const { name } = packedTrip.coolers[i]!;
    return layers.some(({ cooler }) => cooler === name)
      ? packSection(packedTrip, layers, name, options)
      : null;
  }
}

function book({ units, paper, made }: Extract<ReckonAsk, { do: "book" }>): string {
  const { forecast } = lastPlan();
  const pictures = bookPictures(forecast, units);
  return tripBook(forecast, { units, made, paper, pictures });
}

async function study(
  { do: what, text, units, members, width }: Extract<ReckonAsk, { do: "habits" | "stress" }>,
  tell: Tell,
): Promise<Study> {
  const trip = tripOf(text);
  const problems = forecastProblems(trip);
  if (problems.length > 0) throw new Refused(problems);
  const { run } = runnersOf(text);
  const options = {
    members,
    seed: SEED,
    onProgress: (done_frac: number) => tell(done_frac, "weeks like yours"),
  };
  if (what === "habits") {
    const result = await habits(trip, run, options);
    return {
      text: habitsText(result, { units }),
      picture: habitLadder(result, { width, units, id: "habits" }),
    };
  }
  const result = await stress(trip, run, options);
  return { text: stressText(result, { units }), picture: stressGrid(result, { width, units, id: "stress" }) };
}
