import { stringify } from "yaml";
import {
  type CloseOutCooler,
  type CloseOutResult,
  closeOut,
  closeOutText,
  forecastProblems,
  historyBands,
  historyText,
  iceTest,
  iceTestFit,
  iceTestText,
  inlineHistory,
  type Problem,
  readCloseOut,
  readIceTest,
  readTrip,
  type Trip,
  type UnitSystem,
  withoutOwnRecord,
  withRecord,
} from "../../core/index.ts";
import type { Asked, Said } from "./asks.ts";
import type {
  CloseOutAsk,
  IceTestAnswer,
  IceTestAsk,
  LearnAnswer,
  LearnAsk,
  LearnedCooler,
} from "./learnAsks.ts";
import { MemberPool } from "./memberPool.ts";

// Reckons what a trip taught. The page ends it when the answer is no longer wanted.
declare const self: DedicatedWorkerGlobalScope;

/** Seed and members of the command line, so that the same close-out gives the same answer there. */
const RUN = { members: 256, seed: 1 };
/** Columns: the most there are, since the page breaks lines itself. */
const LINE = 200;

class Refused extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super("the close-out has mistakes");
    this.problems = problems;
  }
}

self.addEventListener("message", async ({ data: { id, ask } }: MessageEvent<Asked<LearnAsk>>) => {
  const say = (said: Said): void => self.postMessage(said);
  try {
    const tell = (done_frac: number): void => say({ id, done_frac, says: "weeks like yours" });
    say({ id, answer: ask.do === "iceTest" ? tested(ask) : await answered(ask, tell) });
  } catch (error) {
    if (error instanceof Refused) say({ id, problems: error.problems });
    else say({ id, fault: error instanceof Error ? error.message : String(error) });
  }
});

async function answered(
  { text: told, seen, units, width }: CloseOutAsk,
  onProgress: (done_frac: number) => void,
): Promise<LearnAnswer> {
  const known = tripOf(told);
  // A trip teaches once: what was learned of this very trip before is not believed while it is told anew.
  const text = withoutOwnRecord(told, { trip: known.title, ended: known.return });
  const trip = tripOf(text);
  const file = stringify({ "coldstow-closeout": 1, ...seen }, { lineWidth: 0 });
  const reading = readCloseOut(file, trip);
  if (!reading.ok) throw new Refused(reading.problems);
  const pool = new MemberPool([{ text, file: "trip", beside: [] }]);
  const result = await closeOut(trip, reading.closeOut, pool.run, { ...RUN, onProgress });
  pool.close();
  const shown = result.coolers.filter(({ next_W_per_K }) => next_W_per_K !== null);
  return {
    result,
    text: closeOutText(result, { units, width: LINE }),
    coolers: shown.map((cooler, i) =>
      learned(trip, cooler, result.trip, { units, width, id: `history${i}` }),
    ),
    file,
  };
}

function tested({ test, units, width }: IceTestAsk): IceTestAnswer {
  const file = stringify({ "coldstow-test": 1, ...test }, { lineWidth: 0 });
  const reading = readIceTest(file);
  if (!reading.ok) throw new Refused(reading.problems);
  const result = iceTest(reading.test);
  const { title: trip, ended } = result.test;
  const learned = result.learned_W_per_K;
  const history =
    learned === null
      ? null
      : inlineHistory(null, result.class_W_per_K, {
          trip,
          ended,
          from: "ice test",
          conductance_W_per_K: learned,
        });
  return {
    result,
    text: iceTestText(result, { units, width: LINE }),
    picture: iceTestFit(result, { width, units, id: "icetest" }),
    history,
    file,
  };
}

function tripOf(text: string): Trip {
  const reading = readTrip(text, { file: "trip" });
  if (!reading.ok) throw new Refused(reading.problems);
  const problems = forecastProblems(reading.trip);
  if (problems.length > 0) throw new Refused(problems);
  return reading.trip;
}

function learned(
  trip: Trip,
  cooler: CloseOutCooler,
  own: CloseOutResult["trip"],
  options: { units: UnitSystem; width: number; id: string },
): LearnedCooler {
  const { name, before_W_per_K, learned_W_per_K } = cooler;
  const earlier = trip.coolers.find((one) => one.name === name)?.history ?? null;
  const head = { trip: trip.title, ended: trip.return, from: "close-out" } as const;
  const picture = historyBands(cooler, earlier, own, options);
  if (before_W_per_K === null || learned_W_per_K === null) return { name, picture, history: null };
  const record = { ...head, conductance_W_per_K: learned_W_per_K };
  const text = earlier === null ? null : historyText(earlier);
  const file = withRecord(text, name, before_W_per_K, record);
  return { name, picture, history: { file, inline: inlineHistory(earlier, before_W_per_K, record) } };
}
