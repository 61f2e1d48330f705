import { parentPort } from "node:worker_threads";
import {
  buffersOf,
  type MemberTask,
  replyTo,
  runTask,
  type Trip,
  type TripSource,
  tripsOf,
} from "../core/index.ts";

// The other side of `memberPool.ts`: reads trips when it is given some, and runs one task after the other on the last ones.
let trips: readonly Trip[] = [];

parentPort!.on("message", (message: MemberTask | readonly TripSource[]) => {
  if (!("seed" in message)) {
    trips = tripsOf(message);
    return;
  }
  const reply = replyTo(message, (asked) => runTask(trips, asked));
  parentPort!.postMessage(reply, buffersOf(reply));
});
