import {
  buffersOf,
  type MemberTask,
  replyTo,
  runTask,
  type Trip,
  type TripSource,
  tripsOf,
} from "../../core/index.ts";

// The other side of `memberPool.ts`: the first message is the trips, every later one a task.
declare const self: DedicatedWorkerGlobalScope;

let sources: readonly TripSource[] | null = null;
let trips: readonly Trip[] | null = null;

self.addEventListener("message", ({ data }: MessageEvent<unknown>) => {
  if (sources === null) {
    sources = data as readonly TripSource[];
    return;
  }
  const given = sources;
  const reply = replyTo(data as MemberTask, (task) => {
    trips ??= tripsOf(given);
    return runTask(trips, task);
  });
  self.postMessage(reply, buffersOf(reply));
});
