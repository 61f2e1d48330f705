import { dryIceSublimation_J_per_kg } from "../matter/dryIce.ts";
import { iceLatent_J_per_kg } from "../matter/ice.ts";
import { type Bench, type Flows, makeBench, makeFlows, makeVector, type Vector } from "./bench.ts";
import { type Box, coreShare_frac, hasCore, isLoose, type Part, solid_kg } from "./box.ts";
import { makeRoom, readMasses } from "./contents.ts";
import { drainFilm_kg, drainTo } from "./drain.ts";
import { clothFull_kg } from "./outside.ts";
import { type StageAsk, solveStage } from "./stage.ts";
import { cellCount, chainCount } from "./walls.ts";

/**
 * Two implicit stages, second order, stiffly accurate and L-stable (the SDIRK pair with γ = 1 − 1/√2). It keeps linear
 * invariants exactly, so the energy books close to rounding whatever the step.
 */
const gamma = 1 - Math.SQRT1_2;
/** Leading error of the pair: 1/6 minus the third-order term of its stability function. */
const errorWeight = Math.abs(1 / 6 - (4 * gamma * gamma ** 2 + 3 * gamma ** 2 * (1 - 2 * gamma)));

/** Errors that one step may make at tolerance 1: of a lot's temperature, of a wall's, and of ice as a share of it. */
const lotError_K = 0.01;
/** For the liner; each cell further out may be twice as wrong, since its error reaches the contents through the rest. */
const wallErrors_K: Float64Array = Float64Array.from(
  { length: chainCount * cellCount },
  (_, i) => 0.1 * 2 ** (i % cellCount),
);
const iceError_frac = 3e-4;
const lotHeat_J_per_kgK = 3500;
/** What a step may get wrong of the water in a wet cloth, as a share of what it holds. */
const clothError_frac = 0.02;

/** What a step may get wrong of the enthalpy of one part's skin or core at tolerance 1. */
function partError_J(part: Part): number {
  return part.form === "food"
    ? part.firstMass_kg * lotHeat_J_per_kgK * lotError_K * (hasCore(part) ? coreShare_frac : 1)
    : part.firstMass_kg * iceLatent_J_per_kg * iceError_frac;
}

/** The stepper's memory for one box: scratch vectors and the last rate. Made anew when parts or layers change. */
export interface Stepper {
  bench: Bench;
  now: Vector;
  first: Vector;
  second: Vector;
  base: Vector;
  guess: Vector;
  rate: Vector;
  rateFirst: Vector;
  rateSecond: Vector;
  /** Scratch for what a stage is asked. */
  ask: StageAsk;
  /** By part: what a step may get wrong of its enthalpy. */
  allowed_J: Float64Array;
  /** No rate is known: the first stage makes its own. */
  fresh: boolean;
  /** The rate comes from a probe and not from a step: what is quicker than the probe may be wrong. */
  probed: boolean;
  flowsFirst: Flows;
  flowsSecond: Flows;
  step_s: number;
}

/** @param before of the same box, where there was one: its air temperatures are a start */
export function makeStepper(box: Box, t_s: number, sheet_m2K_per_W: number, before?: Stepper): Stepper {
  const room = makeRoom();
  const bench = makeBench(box, room);
  const vector = (): Vector => makeVector(box.parts.length, bench.touching.n, room);
  const now = vector();
  const stepper: Stepper = {
    bench,
    now,
    first: vector(),
    second: vector(),
    base: vector(),
    guess: vector(),
    rate: vector(),
    rateFirst: vector(),
    rateSecond: vector(),
    ask: { t_s, weight_s: probe_s, base: now, guess: now, known: now, sheet_m2K_per_W },
    allowed_J: room(box.parts.length),
    fresh: true,
    probed: false,
    flowsFirst: makeFlows(),
    flowsSecond: makeFlows(),
    step_s: 120,
  };
  for (let p = 0; p < box.parts.length; p++) stepper.allowed_J[p] = partError_J(box.parts[p]);
  const known = before !== undefined && before.bench.touching.n === bench.touching.n;
  if (known) {
    now.spine_C.set(before.now.spine_C);
    bench.touching.headspace_m3 = before.bench.touching.headspace_m3;
  }
  restart(box, stepper, t_s, sheet_m2K_per_W, known ? 1 : 2);
  return stepper;
}

/** Length of the stage that is thrown away at a restart. */
const probe_s = 1;

/**
 * Begins anew after a jump of contents or surroundings: a short stage, thrown away, finds the air temperatures and the
 * rates that hold from here on; those from before the jump would only mislead the step control.
 *
 * @param passes 2 when no air temperatures are known: then the first pass only finds those about which the second one is
 * linear
 */
export function restart(
  box: Box,
  stepper: Stepper,
  t_s: number,
  sheet_m2K_per_W: number,
  passes: 1 | 2,
): void {
  const { now, first, bench, rate } = stepper;
  readState(box, stepper);
  const ask = askFor(stepper, t_s, probe_s, sheet_m2K_per_W);
  ask.base = now;
  ask.guess = now;
  ask.known = now;
  stepper.fresh = true;
  for (let pass = 0; pass < passes; pass++) {
    if (solveStage(box, bench, ask, first, stepper.flowsFirst) === 0) return;
    now.spine_C.set(first.spine_C);
  }
  slope(now, first, probe_s, rate);
  rate.spine_C.fill(0);
  stepper.fresh = false;
  stepper.probed = true;
}

function askFor(stepper: Stepper, t_s: number, weight_s: number, sheet_m2K_per_W: number): StageAsk {
  const { ask } = stepper;
  ask.t_s = t_s;
  ask.weight_s = weight_s;
  ask.sheet_m2K_per_W = sheet_m2K_per_W;
  return ask;
}

function readState(box: Box, { now, bench }: Stepper): void {
  now.wall.set(box.wall_C);
  for (let p = 0; p < box.parts.length; p++) {
    now.skin[p] = box.parts[p].skin_J;
    now.core[p] = box.parts[p].core_J;
  }
  now.pool = box.pool_J;
  readMasses(box.parts, bench.contents);
}

/** out = a + share · rate. */
function along(a: Vector, share_s: number, rate: Vector, out: Vector): void {
  const { all } = out;
  for (let i = 0; i < all.length; i++) all[i] = a.all[i] + share_s * rate.all[i];
  out.pool = a.pool + share_s * rate.pool;
}

/** out = (b − a) / span. */
function slope(a: Vector, b: Vector, span_s: number, out: Vector): void {
  const { all } = out;
  const per_Hz = 1 / span_s;
  for (let i = 0; i < all.length; i++) all[i] = (b.all[i] - a.all[i]) * per_Hz;
  out.pool = (b.pool - a.pool) * per_Hz;
}

function copy(from: Vector, to: Vector): void {
  to.all.set(from.all);
  to.pool = from.pool;
}

/** Largest error of one step / what is allowed, from the third divided difference of the rates. */
function stepError(box: Box, stepper: Stepper, span_s: number, tolerance: number): number {
  const { rate, rateFirst, rateSecond, allowed_J, bench } = stepper;
  const { nParts, mass_kg, core_kg } = bench.contents;
  const late = (2 * errorWeight * span_s) / (1 - gamma);
  const early = (2 * errorWeight * span_s) / gamma;
  let worst = 0;
  for (let i = 0; i < wallErrors_K.length; i++) {
    const first = rateFirst.wall[i];
    const bend = late * (rateSecond.wall[i] - first) - early * (first - rate.wall[i]);
    worst = Math.max(worst, Math.abs(bend) / wallErrors_K[i]);
  }
  for (let p = 0; p < nParts; p++) {
    if (mass_kg[p] <= 0) continue;
    const first = rateFirst.skin[p];
    const bend = late * (rateSecond.skin[p] - first) - early * (first - rate.skin[p]);
    worst = Math.max(worst, Math.abs(bend) / allowed_J[p]);
    if (core_kg[p] <= 0) continue;
    const firstCore = rateFirst.core[p];
    const coreBend = late * (rateSecond.core[p] - firstCore) - early * (firstCore - rate.core[p]);
    worst = Math.max(worst, Math.abs(coreBend) / allowed_J[p]);
  }
  const drying = Math.abs(stepper.flowsSecond.clothLoss_kg_per_s - stepper.flowsFirst.clothLoss_kg_per_s);
  if (drying > 0) worst = Math.max(worst, (drying * span_s) / (clothError_frac * clothFull_kg(box)));
  return worst / tolerance;
}

/**
 * Tries one step of `span_s` from `t_s`. The box itself is not moved; `accept` does that.
 *
 * @returns the error relative to what is allowed, or infinity when a stage did not settle
 */
export function tryStep(
  box: Box,
  stepper: Stepper,
  t_s: number,
  span_s: number,
  sheet_m2K_per_W: number,
  tolerance: number,
): number {
  const { bench, now, first, second, base, guess, rate, rateFirst, rateSecond } = stepper;
  readState(box, stepper);
  const weight_s = gamma * span_s;
  along(now, stepper.fresh ? 0 : weight_s, rate, guess);
  const ask = askFor(stepper, t_s + weight_s, weight_s, sheet_m2K_per_W);
  ask.base = now;
  ask.guess = guess;
  ask.known = now;
  if (solveStage(box, bench, ask, first, stepper.flowsFirst) === 0) return Number.POSITIVE_INFINITY;
  slope(now, first, weight_s, rateFirst);
  along(now, (1 - gamma) * span_s, rateFirst, base);
  along(now, span_s, rateFirst, guess);
  // The end of a step is looked at from inside it: at a border of two places or habits it belongs to the past.
  ask.t_s = t_s + span_s * (1 - 1e-9);
  ask.base = base;
  ask.known = first;
  if (solveStage(box, bench, ask, second, stepper.flowsSecond) === 0) return Number.POSITIVE_INFINITY;
  slope(base, second, weight_s, rateSecond);
  if (stepper.fresh) copy(rateFirst, rate);
  return stepError(box, stepper, span_s, tolerance);
}

function bookFlows(box: Box, stepper: Stepper, span_s: number): void {
  const { books } = box;
  const a = (1 - gamma) * span_s;
  const b = gamma * span_s;
  const one = stepper.flowsFirst;
  const two = stepper.flowsSecond;
  const add = (first_W: number, second_W: number): number => {
    const heat = a * first_W + b * second_W;
    books.moved_J += Math.abs(heat);
    return heat;
  };
  books.lid_J += add(one.lid_W, two.lid_W);
  books.sides_J += add(one.sides_W, two.sides_W);
  books.base_J += add(one.base_W, two.base_W);
  books.seal_J += add(one.seal_W, two.seal_W);
  books.openingAir_J += add(one.openingAir_W, two.openingAir_W);
  books.openingExposure_J += add(one.openingExposure_W, two.openingExposure_W);
  books.gas_J += add(one.gas_W, two.gas_W);
  books.sun_J += a * one.sun_W + b * two.sun_W;
  // Water that would leave a dry box is not there to leave.
  const water = Math.max(-box.pool_kg, a * one.water_kg_per_s + b * two.water_kg_per_s);
  books.condensed_kg += water;
  if (water < 0 && box.pool_J > 0) {
    // What leaves as vapour takes its warmth along, or the last of a pool would grow hot.
    const warmth_J = (box.pool_J * -water) / box.pool_kg;
    box.pool_J -= warmth_J;
    books.drained_J += warmth_J;
  }
  box.pool_kg += water;
  box.cloth_kg = Math.max(0, box.cloth_kg - a * one.clothLoss_kg_per_s - b * two.clothLoss_kg_per_s);
  box.clothLoss_kg_per_s = two.clothLoss_kg_per_s;
  box.t_s += span_s;
}

/** Meltwater runs down to the pool (at 0 °C it carries no enthalpy), gas leaves. */
function shedMass(box: Box, rate: Vector, span_s: number): void {
  box.melt_kg_per_s.fill(0);
  box.gas_kg_per_s.fill(0);
  for (let p = 0; p < box.parts.length; p++) {
    const part = box.parts[p];
    if (part.mass_kg <= 0 || (!isLoose(part.form) && part.form !== "dry ice")) continue;
    const left =
      part.form === "dry ice"
        ? Math.min(part.mass_kg, Math.max(0, -part.skin_J / dryIceSublimation_J_per_kg))
        : solid_kg(part, part.skin_J);
    const lost = part.mass_kg - left;
    part.mass_kg = left;
    if (part.form === "dry ice") {
      box.gas_kg_per_s[part.layer] += lost / span_s;
      box.books.gas_kg += lost;
    } else {
      box.melt_kg_per_s[part.layer] += lost / span_s;
      box.pool_kg += lost;
    }
    if (left === 0) {
      box.pool_J += part.skin_J;
      part.skin_J = 0;
      // What is gone has no rate to carry on with.
      rate.skin[p] = 0;
    }
  }
}

/** Moves the box to the end of the step just tried, and books what crossed its border. */
export function accept(box: Box, stepper: Stepper, span_s: number): void {
  const { now, second, rate, rateSecond } = stepper;
  box.wall_C.set(second.wall);
  for (let p = 0; p < box.parts.length; p++) {
    box.parts[p].skin_J = second.skin[p];
    box.parts[p].core_J = second.core[p];
  }
  box.pool_J = second.pool;
  bookFlows(box, stepper, span_s);
  copy(rateSecond, rate);
  for (let i = 0; i < rate.spine_C.length; i++)
    rate.spine_C[i] = (second.spine_C[i] - now.spine_C[i]) / span_s;
  now.spine_C.set(second.spine_C);
  stepper.fresh = false;
  stepper.probed = false;
  shedMass(box, rate, span_s);
  if (box.input.drain === "open") drainTo(box, drainFilm_kg(box));
}
