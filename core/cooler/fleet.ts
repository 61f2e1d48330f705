import { iceLatent_J_per_kg } from "../matter/ice.ts";
import { ModelError, requireFinite } from "../quantity/errors.ts";
import { bookIn, doAct } from "./acts.ts";
import { emptyBooks } from "./books.ts";
import type { Box } from "./box.ts";
import { type Closures, medianClosures } from "./closures.ts";
import type { Fleet } from "./fleetState.ts";
import { layOut, partOf } from "./layout.ts";
import { clothFull_kg } from "./outside.ts";
import { accept, makeStepper, tryStep } from "./stepper.ts";
import { makeCoolerTrack, makeLotTrack, record } from "./track.ts";
import type { Around, CoolerInput, FleetInput, Lot } from "./types.ts";
import { buildWalls, cellCount, chainCount } from "./walls.ts";

/** How finely to step. The defaults meet 0.2 % in ice-out with room to spare (bench). */
export interface SimulateOptions {
  closures?: Closures;
  /** Allowed error of a step relative to the standard one. */
  tolerance?: number;
  maxStep_s?: number;
}

const day_s = 86_400;
const leastStep_s = 1e-3;
/** Resistance of what lies on the top layer: 10 mm of foam; a cloth is only a barrier, the air inside is saturated. */
const sheets: Readonly<Record<string, number>> = { "foam sheet": 0.27, cloth: 0.05, none: 0 };

const sheetOf = (box: Box): number =>
  box.input.top === "foam sheet" ? sheets["foam sheet"] : box.cover === "wet cloth inside" ? sheets.cloth : 0;

/** Moments at which something in the outside or in a habit is not smooth, sorted, within the trip. */
function weatherBreaks_s(input: FleetInput): number[] {
  const all = new Set<number>();
  for (const cooler of input.coolers) {
    for (const at of cooler.around.breaks_s) all.add(at);
    if (cooler.sealedUntil_s !== null) all.add(cooler.sealedUntil_s);
    if (cooler.openings === null) continue;
    const first = -Math.floor(input.departClock_s / day_s) * day_s - input.departClock_s;
    for (let day = first; day < input.end_s; day += day_s) {
      all.add(day + cooler.openings.from_s);
      all.add(day + cooler.openings.to_s);
    }
  }
  for (const act of input.acts) if (act.do === "open") all.add(act.t_s + act.for_s);
  return [...all].filter((t) => t > 0 && t < input.end_s).sort((a, b) => a - b);
}

const roomAround = (room_C: number): Around => ({
  stays: [],
  breaks_s: [],
  at: (_t_s, out) =>
    Object.assign(out, {
      air_C: room_C,
      humidity_kg_per_kg: 0.007,
      pressure_Pa: 101_325,
      wind_m_per_s: 0,
      lidSun_W_per_m2: 0,
      sideSun_W_per_m2: 0,
      lidRadiant_C: room_C,
      sideRadiant_C: room_C,
      ground_C: room_C,
      groundResistance_m2K_per_W: 0.2,
    }),
});

/** Temperatures of the walls when the load goes in: uniform, or after a night with sacrificial ice, simulated. */
function startWalls(cooler: CoolerInput, options: SimulateOptions): Float64Array {
  const { start } = cooler;
  if (start.kind === "uniform") return new Float64Array(chainCount * cellCount).fill(start.body_C);
  const lot: Lot = {
    kind: "ice",
    id: "sacrificial",
    form: "cube",
    mass_kg: start.ice_kg,
    pieces: 1,
    start_C: 0,
    liquid_frac: 0.05,
    layer: null,
  };
  const night: FleetInput = {
    departClock_s: 0,
    end_s: start.for_s,
    acts: [],
    coolers: [
      {
        ...cooler,
        start: { kind: "uniform", body_C: start.room_C },
        cover: "none",
        top: "none",
        drain: "keep",
        openings: null,
        sealedUntil_s: null,
        around: roomAround(start.room_C),
        lots: start.ice_kg > 0 ? [lot] : [],
      },
    ],
  };
  const fleet = startFleet(night, options);
  runFleet(fleet, night.end_s);
  return fleet.boxes[0].wall_C;
}

function makeBox(
  cooler: CoolerInput,
  index: number,
  fleet: Pick<Fleet, "lots" | "lotTracks">,
  options: SimulateOptions,
): Box {
  const closures = options.closures ?? medianClosures;
  const walls = buildWalls(cooler.body, closures);
  const parts = cooler.lots.map((lot) => {
    fleet.lotTracks.push(makeLotTrack(index));
    return partOf(lot, fleet.lots.push(lot) - 1, closures);
  });
  const laid = layOut(parts, fleet.lots, walls.floor_m2, closures);
  const box: Box = {
    index,
    input: cooler,
    closures,
    walls,
    wall_C: startWalls(cooler, options),
    parts: laid.parts,
    layers: laid.layers,
    pool_kg: 0,
    pool_J: 0,
    cover: cooler.cover,
    cloth_kg: 0,
    melt_kg_per_s: new Float64Array(laid.layers),
    gas_kg_per_s: new Float64Array(laid.layers),
    openUntil_s: Number.NEGATIVE_INFINITY,
    openAir_m3_per_s: 0,
    books: emptyBooks(),
  };
  for (const part of box.parts) bookIn(box, part);
  for (let i = 0; i < box.wall_C.length; i++) box.books.wallStart_J += walls.heat_J_per_K[i] * box.wall_C[i];
  box.cloth_kg = clothFull_kg(box);
  return box;
}

/**
 * Packs all coolers and shuts the lids: the state at departure, nothing has happened yet.
 *
 * @throws DomainError on a number that no cooler can have
 */
export function startFleet(input: FleetInput, options: SimulateOptions = {}): Fleet {
  requireFinite("end_s", input.end_s, 0, 400 * day_s);
  const fleet: Fleet = {
    input,
    t_s: 0,
    lots: [],
    boxes: [],
    steppers: [],
    tracks: [],
    lotTracks: [],
    acts: [...input.acts].sort((a, b) => a.t_s - b.t_s),
    nextAct: 0,
    breaks_s: weatherBreaks_s(input),
    tolerance: options.tolerance ?? 1,
    maxStep_s: options.maxStep_s ?? 3600,
    steps: 0,
    refused: 0,
  };
  fleet.boxes = input.coolers.map((cooler, index) => makeBox(cooler, index, fleet, options));
  fleet.steppers = fleet.boxes.map((box) => makeStepper(box, 0, input.departClock_s, sheetOf(box)));
  fleet.tracks = fleet.boxes.map(() => makeCoolerTrack());
  fleet.boxes.forEach((box, i) => {
    record(box, fleet.steppers[i], 0, iceLatent_J_per_kg, fleet.tracks[i], fleet.lotTracks);
  });
  return fleet;
}

/** Steps one box to `to_s` under error control. */
function advance(fleet: Fleet, index: number, to_s: number): void {
  const box = fleet.boxes[index];
  const stepper = fleet.steppers[index];
  const ask = {
    clock0_s: fleet.input.departClock_s,
    sheet_m2K_per_W: sheetOf(box),
    tolerance: fleet.tolerance,
  };
  let t_s = fleet.t_s;
  while (t_s < to_s) {
    const rest = to_s - t_s;
    const want = Math.min(stepper.step_s, fleet.maxStep_s);
    // Two equal steps rather than a long one and a sliver.
    const span_s = want >= rest ? rest : Math.min(want, 0.5 * rest);
    const error = tryStep(box, stepper, t_s, span_s, ask);
    if (Number.isNaN(error))
      throw new ModelError(`${box.input.name}: a step at ${t_s} s gave no number`, error);
    if (error > 1) {
      fleet.refused++;
      stepper.step_s = span_s * (Number.isFinite(error) ? Math.max(0.2, 0.9 / Math.cbrt(error)) : 0.25);
      if (stepper.step_s < leastStep_s)
        throw new ModelError(`${box.input.name}: no step settles at ${t_s} s`, error);
      continue;
    }
    accept(box, stepper, span_s);
    fleet.steps++;
    t_s = span_s === rest ? to_s : t_s + span_s;
    stepper.step_s =
      Math.max(want, span_s) * Math.min(3, Math.max(0.3, 0.9 / Math.cbrt(Math.max(error, 1e-4))));
    if (span_s < want) stepper.step_s = Math.max(want, stepper.step_s);
    record(box, stepper, t_s, iceLatent_J_per_kg, fleet.tracks[index], fleet.lotTracks);
  }
}

function nextStop(fleet: Fleet, until_s: number): number {
  let stop = until_s;
  for (const at of fleet.breaks_s)
    if (at > fleet.t_s) {
      stop = Math.min(stop, at);
      break;
    }
  const act = fleet.acts[fleet.nextAct];
  return act ? Math.min(stop, Math.max(act.t_s, fleet.t_s)) : stop;
}

function actsNow(fleet: Fleet): void {
  const touched = new Set<Box>();
  while (fleet.nextAct < fleet.acts.length && fleet.acts[fleet.nextAct].t_s <= fleet.t_s) {
    for (const box of doAct(fleet, fleet.acts[fleet.nextAct])) touched.add(box);
    fleet.nextAct++;
  }
  for (const box of touched) {
    box.melt_kg_per_s = resized(box.melt_kg_per_s, box.layers);
    box.gas_kg_per_s = resized(box.gas_kg_per_s, box.layers);
    const old = fleet.steppers[box.index];
    fleet.steppers[box.index] = makeStepper(box, fleet.t_s, fleet.input.departClock_s, sheetOf(box));
    fleet.steppers[box.index].step_s = Math.min(old.step_s, 300);
    record(
      box,
      fleet.steppers[box.index],
      fleet.t_s,
      iceLatent_J_per_kg,
      fleet.tracks[box.index],
      fleet.lotTracks,
    );
  }
}

function resized(old: Float64Array, length: number): Float64Array {
  if (old.length === length) return old;
  const out = new Float64Array(length);
  out.set(old.subarray(0, length));
  return out;
}

/**
 * Runs all coolers on to `until_s`, landing on every act and on every moment where the outside is not smooth. Boxes go
 * their own way between acts; running on in pieces gives the same answer within the step tolerance.
 *
 * @throws ModelError when no step settles
 */
export function runFleet(fleet: Fleet, until_s: number): void {
  actsNow(fleet);
  while (fleet.t_s < until_s) {
    const stop = nextStop(fleet, until_s);
    if (stop > fleet.t_s) {
      for (let i = 0; i < fleet.boxes.length; i++) advance(fleet, i, stop);
      fleet.t_s = stop;
    }
    actsNow(fleet);
  }
}
