import { parentPort, workerData } from "node:worker_threads";
import { buffersOf, type MemberTask, replyTo, runTask, type TripSource, tripsOf } from "../core/index.ts";

// The other side of `memberPool.ts`: reads the trips once, then runs one task after the other.
const trips = tripsOf(workerData as readonly TripSource[]);

parentPort!.on("message", (task: MemberTask) => {
  const reply = replyTo(task, (asked) => runTask(trips, asked));
  parentPort!.postMessage(reply, buffersOf(reply));
});
