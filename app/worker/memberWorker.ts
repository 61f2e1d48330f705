import {
  buffersOf,
  type MemberTask,
  replyTo,
  runTask,
  type Trip,
  type TripSource,
  tripsOf,
} from "../../core/index.ts";

// The other side of `memberPool.ts`: a list is trips, read when the first task of them comes; anything else is a task.
declare const self: DedicatedWorkerGlobalScope;

let sources: readonly TripSource[] = [];
let trips: readonly Trip[] | null = null;

self.addEventListener("message", ({ data }: MessageEvent<MemberTask | readonly TripSource[]>) => {
  if (!("seed" in data)) {
    sources = data;
    trips = null;
    return;
  }
  const reply = replyTo(data, (task) => {
    trips ??= tripsOf(sources);
    return runTask(trips, task);
  });
  self.postMessage(reply, buffersOf(reply));
});
