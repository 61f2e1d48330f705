import { type Closures, medianClosures } from "../cooler/closures.ts";
import { runFleet, startFleet } from "../cooler/fleet.ts";
import type { FleetInput } from "../cooler/types.ts";
import { buildWalls, conductanceRange_W_per_K } from "../cooler/walls.ts";
import { drawWorld } from "../ensemble/drawWorld.ts";
import { normalQuantile } from "../ensemble/normalQuantile.ts";
import { drawnClosures, valueAtScore } from "../ensemble/priors.ts";
import { sobol_frac } from "../ensemble/sobol.ts";
import { inWorld } from "../forecast/inWorld.ts";
import { loadTrip } from "../forecast/load.ts";
import { looseStep_rel } from "../forecast/run.ts";
import { valueAt, valueBefore } from "../forecast/series.ts";
import type { Spread } from "../matter/spread.ts";
import { handling_frac } from "./experiment.ts";
import { memberConductances_W_per_K } from "./learn.ts";
import type { IceTest } from "./readIceTest.ts";
import { roomAround, roomError_K } from "./room.ts";

/** What is weighed when. */
export interface WeighedRow {
  after_s: number;
  of: "ice" | "drained";
}

/**
 * Where the two fitted things stand, in standard scores of what is believed of them before: the logarithm of the whole
 * conductance, and the heat of the body.
 */
export type Scores = readonly [conductance: number, body: number];

/** Standard score of the 90 % point. */
export const z90 = 1.2815515655446004;
const priorMembers = 256;
/** Enough that chance in their covariance is small beside the scale. */
const scatterMembers = 40;
/** A jug or a bucket on the scale: what sticks and what is spilled. Our own choice. */
const spilled_kg = 0.05;
const spilled_frac = 0.02;

/** Draws of the room's error take a place in the sequence that no input of a trip has. */
const roomDimension = 4096;

/**
 * One cooler with its ice in a room, by the model of the trips. It is run for any conductance and any heat of the body, and
 * knows what everything else that is in doubt does to a weighing.
 */
export class IceTestModel {
  readonly test: IceTest;
  /** What is believed of a cooler of this kind: mean and standard deviation of the logarithm of its conductance, W/K. */
  readonly logMean: number;
  readonly logWidth: number;
  readonly #input: FleetInput;

  constructor(test: IceTest) {
    this.test = test;
    this.#input = loadTrip(test.trip);
    const logs = Array.from(memberConductances_W_per_K(test.trip, priorMembers, 1)[0]!, Math.log);
    this.logMean = logs.reduce((sum, one) => sum + one, 0) / logs.length;
    this.logWidth = Math.sqrt(
      logs.reduce((sum, one) => sum + (one - this.logMean) ** 2, 0) / (logs.length - 1),
    );
  }

  conductance_W_per_K(score: number): number {
    return Math.exp(this.logMean + score * this.logWidth);
  }

  /** The band of a normal belief in scores. */
  conductanceBand_W_per_K(score: number, width: number): Spread {
    const at = (z: number): number => this.conductance_W_per_K(score + z * width);
    return { p10: at(-z90), p50: at(0), p90: at(z90) };
  }

  /** Heat that the body gives up while it cools through, kJ/K, as results of a forecast have it. */
  bodyBand_kJ_per_K(score: number, width: number): Spread {
    const { body } = this.#input.coolers[0]!;
    const at = (z: number): number =>
      buildWalls(body, this.#closures(score + z * width)).effective_J_per_K / 1000;
    return { p10: at(-z90), p50: at(0), p90: at(z90) };
  }

  #closures(score: number, from: Readonly<Closures> = medianClosures): Closures {
    return { ...from, body_J_per_kgK: valueAtScore(drawnClosures.body_J_per_kgK, score) };
  }

  /** The likely course of everything else, with this conductance and this body. */
  predict_kg(rows: readonly WeighedRow[], scores: Scores): number[] {
    return this.#weigh(this.#input, rows, scores, 0);
  }

  /** The same in the world of one member, whose cooler and body are its own only where `scores` is null. */
  predictIn_kg(rows: readonly WeighedRow[], member: number, seed: number, scores: Scores | null): number[] {
    const { trip } = this.test;
    const world = drawWorld(trip, member, seed);
    // The ice was weighed: how far that may be off is the scale's matter.
    const lots = new Map([...world.lots].map(([id, lot]) => [id, { ...lot, mass_frac: 1 }]));
    const input = inWorld(this.#input, trip.weather, { ...world, lots });
    const room_K = valueAtScore(roomError_K, normalQuantile(sobol_frac(member, roomDimension, seed)));
    return this.#weigh(input, rows, scores, room_K);
  }

  /** Conductance of a member's own cooler, W/K. */
  trueConductance_W_per_K(member: number, seed: number): number {
    const { trip } = this.test;
    const [cooler] = inWorld(this.#input, trip.weather, drawWorld(trip, member, seed)).coolers;
    return buildWalls(cooler!.body, cooler!.closures ?? medianClosures).conductance_W_per_K;
  }

  #weigh(input: FleetInput, rows: readonly WeighedRow[], scores: Scores | null, room_K: number): number[] {
    const [told] = input.coolers;
    const around = roomAround((t_s) => this.#room_C(t_s) + room_K, this.test.humidity_frac);
    const cooler = { ...told!, around };
    if (scores !== null) {
      cooler.closures = this.#closures(scores[1], told!.closures ?? medianClosures);
      const free = { ...told!.body, measured_W_per_K: null };
      const { least_W_per_K, most_W_per_K } = conductanceRange_W_per_K(free, cooler.closures);
      const wanted = this.conductance_W_per_K(scores[0]);
      const measured_W_per_K = Math.min(0.99 * most_W_per_K, Math.max(1.01 * least_W_per_K, wanted));
      cooler.body = { ...free, measured_W_per_K };
    }
    const fleet = startFleet({ ...input, coolers: [cooler] }, { tolerance: looseStep_rel, books: "end" });
    runFleet(fleet, Math.max(60, ...rows.map(({ after_s }) => after_s)));
    const { t_s, ice_kg, load_kg } = fleet.tracks[0]!;
    // Nothing else leaves a shut box; what condenses in it is little beside a bucket.
    const out = (at_s: number): number => load_kg[0]! - valueAt(t_s, load_kg, at_s);
    let before_s = 0;
    return rows.map(({ after_s, of }) => {
      if (of === "ice") return valueBefore(t_s, ice_kg, after_s);
      const kg = out(after_s) - (before_s > 0 ? out(before_s) : 0);
      before_s = after_s;
      return kg;
    });
  }

  #room_C(at_s: number): number {
    const { room } = this.test;
    return valueAt(
      room.map(({ t_s }) => t_s),
      room.map(({ room_C }) => room_C),
      at_s,
    );
  }

  /**
   * How far weighings may be off the likely course with conductance and body known, as a covariance, kg²: the scale, hands,
   * the weight of the ice at first, and all that the model does not know of room, packing and heat inside.
   */
  scatter_kg2(rows: readonly WeighedRow[], scores: Scores): number[][] {
    const { scale_kg } = this.test;
    const likely = this.predict_kg(rows, scores);
    const members = Array.from({ length: scatterMembers }, (_, m) => this.predictIn_kg(rows, m, 1, scores));
    const mean = rows.map((_, i) => members.reduce((sum, one) => sum + one[i]!, 0) / scatterMembers);
    return rows.map((row, i) =>
      rows.map((other, k) => {
        const joint = members.reduce((sum, one) => sum + (one[i]! - mean[i]!) * (one[k]! - mean[k]!), 0);
        // The ice at first went over the same scale: what is wrong with it is in every ice left.
        const first = row.of === "ice" && other.of === "ice" ? scale_kg ** 2 : 0;
        return joint / (scatterMembers - 1) + first + (i === k ? this.#own_kg2(row, likely[i]!) : 0);
      }),
    );
  }

  /** What one weighing scatters by itself. */
  #own_kg2({ of }: WeighedRow, mass_kg: number): number {
    if (of === "ice") return this.test.scale_kg ** 2 + (handling_frac * mass_kg) ** 2;
    return this.test.scale_kg ** 2 / 4 + spilled_kg ** 2 + (spilled_frac * mass_kg) ** 2;
  }
}
