/** Run by itself: the fastest of some runs of half the members in one thread, printed in ms. A control for two workers. */
import { runTask, tripsOf } from "../../core/index.ts";
import { weekOfFour } from "./ensembleTrip.ts";

const trips = tripsOf([weekOfFour()]);
const half = { trip: 0, variant: null, from: 0, to: 128, seed: 1, series: true };
const times_ms = Array.from({ length: 4 }, () => {
  const from = performance.now();
  runTask(trips, half);
  return performance.now() - from;
});
console.log(Math.min(...times_ms.slice(1)));
