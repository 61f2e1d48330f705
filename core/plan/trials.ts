import { drawWorld } from "../ensemble/drawWorld.ts";
import { runMembers } from "../ensemble/runMembers.ts";
import { Cancelled, type Draws } from "../ensemble/types.ts";
import { forecast } from "../forecast/forecast.ts";
import type { Forecast } from "../forecast/types.ts";
import type { Trip } from "../trip/types.ts";

/** How changes on the way are looked for. */
export interface ProposeOptions {
  /** Members that a band comes from; 0: the middle case alone. */
  members: number;
  seed: number;
  onProgress?: (done_frac: number, says: string) => void;
  signal?: { readonly aborted: boolean };
}

/** A forecast that has its run, as `forecast` always gives it. */
export type Run = Forecast & { fleet: NonNullable<Forecast["fleet"]> };

/** Runs trials of one search, counts them and tells when there have been enough. */
export class Trials {
  readonly options: ProposeOptions;
  readonly #budget: number;
  #spent = 0;
  #says = "";

  /** @param budget forecasts that the search may take */
  constructor(options: ProposeOptions, budget: number) {
    this.options = options;
    this.#budget = budget;
  }

  says(words: string): void {
    this.#says = words;
  }

  /** Forecasts that are left; a search that comes to its end tells what it has. */
  get leftCount(): number {
    return Math.max(0, this.#budget - this.#spent);
  }

  /** Middle case of a trip, or the world of one member. */
  run(trip: Trip, member: number | null = null): Run {
    this.#check();
    this.#spent++;
    const world = member === null ? {} : { world: drawWorld(trip, member, this.options.seed) };
    return forecast(trip, { effects: false, ...world }) as Run;
  }

  /** The members of a trip, without series; null with 0 members. */
  draws(trip: Trip): Draws | null {
    this.#check();
    const { members, seed } = this.options;
    return members === 0 ? null : runMembers(trip, { from: 0, to: members, seed, series: false });
  }

  #check(): void {
    const { signal, onProgress } = this.options;
    if (signal?.aborted) throw new Cancelled("called off");
    onProgress?.(Math.min(0.99, this.#spent / this.#budget), this.#says);
  }
}
