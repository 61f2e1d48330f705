import {
  type CampAnswer,
  Cancelled,
  camp,
  campAnswer,
  keepRuns,
  type Log,
  livedFile,
  type Problem,
  type RunTasks,
  readLog,
  readTrip,
  type Trip,
} from "../../core/index.ts";
import type { Asked, Said } from "./asks.ts";
import type { CampAsk } from "./campAsks.ts";
import { MemberPool } from "./memberPool.ts";

// Forecasts a trip from its log. Members of the trip as lived are kept: a further look only weighs them anew.
declare const self: DedicatedWorkerGlobalScope;

/** Seed and members of the command line, so that the same log gives the same answer there. */
const SEED = 1;
const FULL = { members: 256, nRefreshes: 1, nTryMembers: 24 };
/** The first members of the full answer, so that they are not run twice. */
const ROUGH = { members: 32, nRefreshes: 0, nTryMembers: 0 };

class Refused extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super("the trip as lived has mistakes");
    this.problems = problems;
  }
}

interface Lived {
  text: string;
  trip: Trip;
  run: RunTasks;
}

let pool: MemberPool | null = null;
let lived: Lived | null = null;
let read: { text: string; trip: Trip } | null = null;
/** Given to what is reckoned now; a newer question calls it off. */
let signal: { aborted: boolean } = { aborted: false };

self.addEventListener("message", async ({ data: { id, ask } }: MessageEvent<Asked<CampAsk>>) => {
  const say = (said: Said): void => self.postMessage(said);
  signal.aborted = true;
  const own = { aborted: false };
  signal = own;
  try {
    say({
      id,
      answer: await answered(ask, own, (done_frac) => say({ id, done_frac, says: "weeks like yours" })),
    });
  } catch (error) {
    if (error instanceof Cancelled) say({ id, isOld: true });
    else if (error instanceof Refused) say({ id, problems: error.problems });
    else say({ id, fault: error instanceof Error ? error.message : String(error) });
  }
});

async function answered(
  { text, log: file, now_s, units, width, before, isRough }: CampAsk,
  own: { readonly aborted: boolean },
  onProgress: (done_frac: number) => void,
): Promise<CampAnswer> {
  const trip = tripOf(text);
  const reading = readLog(JSON.stringify(file), trip);
  if (!reading.ok) throw new Refused(reading.problems);
  const { trip: livedTrip, run } = livedOf(text, trip, reading.log);
  const options = { ...(isRough ? ROUGH : FULL), seed: SEED, now_s, signal: own, onProgress, pause };
  const whole = await camp(livedTrip, reading.log, run, options);
  return campAnswer(whole, { units, width, before });
}

/** Lets messages in, so that a newer question is heard while acts are tried. */
const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

function tripOf(text: string): Trip {
  if (read?.text !== text) {
    const reading = readTrip(text, { file: "trip" });
    if (!reading.ok) throw new Refused(reading.problems);
    read = { text, trip: reading.trip };
  }
  return read.trip;
}

/** The trip as lived with a runner that knows its members; the same one for as long as nothing was done. */
function livedOf(text: string, trip: Trip, log: Log): Lived {
  const livedText = livedFile(text, trip, log);
  if (lived?.text === livedText) return lived;
  const reading = readTrip(livedText, { file: "trip" });
  if (!reading.ok) throw new Refused(reading.problems);
  const sources = [{ text: livedText, file: "trip", beside: [] }];
  if (pool === null) pool = new MemberPool(sources);
  else pool.take(sources);
  lived = { text: livedText, trip: reading.trip, run: keepRuns(pool.run) };
  return lived;
}
