import { ModelError } from "../quantity/errors.ts";
import { type BoxAct, bookIn, doAct, mergeBoxes } from "./acts.ts";
import { balanceOf } from "./balance.ts";
import { emptyBooks } from "./books.ts";
import type { Box } from "./box.ts";
import { type Break, breaksOf, outsideJumps } from "./breaks.ts";
import { checkInput } from "./checkInput.ts";
import { type Closures, medianClosures } from "./closures.ts";
import type { Fleet } from "./fleetState.ts";
import { layOut, partOf, shedWater } from "./layout.ts";
import { clothFull_kg } from "./outside.ts";
import { accept, makeStepper, restart, tryStep } from "./stepper.ts";
import { makeCoolerTrack, makeLotTrack, record } from "./track.ts";
import type { Act, Around, CoolerInput, FleetInput, Lot } from "./types.ts";
import { buildWalls, cellCount, chainCount } from "./walls.ts";

/** How finely to step. The defaults meet 0.2 % in ice-out with room to spare (bench). */
export interface SimulateOptions {
  closures?: Readonly<Closures>;
  /** Allowed error of a step relative to the standard one. */
  tolerance?: number;
  maxStep_s?: number;
  /** The books at every moment written down, or only those of the end; at every moment when left out. */
  books?: "steps" | "end";
}

type MergeAct = Extract<Act, { do: "merge" }>;

const leastStep_s = 1e-3;

/** Resistance of what lies on the top layer; a wet cloth there is only a barrier, since the air inside is saturated. */
function sheet_m2K_per_W(box: Box): number {
  if (box.input.top === "foam sheet") return box.closures.foamSheet_m2K_per_W;
  return box.cover === "wet cloth inside" ? box.closures.innerCloth_m2K_per_W : 0;
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
  const fleet = startFleet(night, { ...options, books: "end" });
  runFleet(fleet, night.end_s);
  return fleet.boxes[0].wall_C;
}

function makeBox(cooler: CoolerInput, index: number, fleet: Fleet, options: SimulateOptions): Box {
  const { lots, lotIndex } = fleet;
  const closures = cooler.closures ?? options.closures ?? medianClosures;
  const walls = buildWalls(cooler.body, closures);
  const parts = cooler.lots.map((lot) => partOf(lot, lotIndex.get(lot.id) ?? -1, closures));
  const laid = layOut(parts, lots, walls.floor_m2, closures);
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
    t_s: 0,
    cloth_kg: 0,
    clothLoss_kg_per_s: 0,
    melt_kg_per_s: new Float64Array(laid.layers),
    gas_kg_per_s: new Float64Array(laid.layers),
    openUntil_s: Number.NEGATIVE_INFINITY,
    openAir_m3_per_s: 0,
    books: emptyBooks(),
  };
  for (const part of box.parts) bookIn(box, part);
  shedWater(box);
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
  checkInput(input);
  const fleet: Fleet = {
    input,
    t_s: 0,
    lots: [],
    lotIndex: new Map(),
    boxes: [],
    steppers: [],
    tracks: [],
    lotTracks: [],
    acts: [...input.acts].sort((a, b) => a.t_s - b.t_s),
    nextAct: 0,
    breaks: input.coolers.map((cooler, index) => breaksOf(cooler, index, input)),
    tolerance: options.tolerance ?? 1,
    maxStep_s: options.maxStep_s ?? 3600,
    books: options.books ?? "steps",
    steps: 0,
    refused: 0,
  };
  const addLot = (lot: Lot, cooler: number): void => {
    fleet.lotIndex.set(lot.id, fleet.lots.length);
    fleet.lots.push(lot);
    fleet.lotTracks.push(makeLotTrack(cooler));
  };
  input.coolers.forEach((cooler, index) => {
    for (const lot of cooler.lots) addLot(lot, index);
  });
  for (const act of input.acts) if (act.do === "put in") addLot(act.lot, act.cooler);
  fleet.boxes = input.coolers.map((cooler, index) => makeBox(cooler, index, fleet, options));
  fleet.steppers = fleet.boxes.map((box) => makeStepper(box, 0, sheet_m2K_per_W(box)));
  fleet.tracks = fleet.boxes.map(() => makeCoolerTrack());
  fleet.boxes.forEach((box) => {
    writeDown(fleet, box, 0);
  });
  return fleet;
}

/** Writes down how a box stands. */
function writeDown(fleet: Fleet, box: Box, t_s: number): void {
  record(box, fleet.steppers[box.index], t_s, fleet.tracks[box.index], fleet.lotTracks);
  if (fleet.books === "steps" || t_s === fleet.input.end_s)
    fleet.tracks[box.index].books.push(balanceOf(box));
}

/** Steps one box on to `to_s` under error control; nothing jumps on the way. */
function advance(fleet: Fleet, box: Box, from_s: number, to_s: number): void {
  const stepper = fleet.steppers[box.index];
  const sheet = sheet_m2K_per_W(box);
  let t_s = from_s;
  while (t_s < to_s) {
    const rest = to_s - t_s;
    const want = Math.min(stepper.step_s, fleet.maxStep_s);
    // Two equal steps rather than a long one and a sliver.
    const span_s = want >= rest ? rest : Math.min(want, 0.5 * rest);
    const error = tryStep(box, stepper, t_s, span_s, sheet, fleet.tolerance);
    if (Number.isNaN(error))
      throw new ModelError(`${box.input.name}: a step at ${t_s} s gave no number`, error);
    const factor = Math.min(3, Math.max(0.2, 0.9 / Math.cbrt(Math.max(error, 1e-4))));
    if (error > 1) {
      fleet.refused++;
      if (stepper.probed) stepper.fresh = true;
      // At a corner of a curve the error falls slower than by the cube, so a timid cut would be refused again.
      stepper.step_s = span_s * Math.min(factor, 0.5);
      if (stepper.step_s < leastStep_s)
        throw new ModelError(`${box.input.name}: no step settles at ${t_s} s`, error);
      continue;
    }
    accept(box, stepper, span_s);
    fleet.steps++;
    t_s = span_s === rest ? to_s : t_s + span_s;
    // A step cut short by a stop says little about how long the next may be.
    stepper.step_s = Math.max(span_s * factor, span_s < want ? want : 0);
    writeDown(fleet, box, t_s);
  }
}

/** Begins anew at a break, where something jumps there. */
function passBreak(fleet: Fleet, box: Box, { t_s, lid }: Break): void {
  const stepper = fleet.steppers[box.index];
  if (lid || outsideJumps(box.input, t_s, stepper.bench.outside))
    restart(box, stepper, t_s, sheet_m2K_per_W(box), 1);
}

/** Runs one box from `from_s` to `to_s`, halting at every break of its outside. */
function runSmooth(fleet: Fleet, box: Box, from_s: number, to_s: number): void {
  let t_s = from_s;
  for (const stop of fleet.breaks[box.index]) {
    if (stop.t_s <= t_s) continue;
    if (stop.t_s > to_s) break;
    advance(fleet, box, t_s, stop.t_s);
    passBreak(fleet, box, stop);
    t_s = stop.t_s;
  }
  advance(fleet, box, t_s, to_s);
}

/** Makes the stepper anew after the contents changed, and writes the moment down once more. */
function renew(fleet: Fleet, box: Box, t_s: number): void {
  box.melt_kg_per_s = new Float64Array(box.layers);
  box.gas_kg_per_s = new Float64Array(box.layers);
  const before = fleet.steppers[box.index];
  fleet.steppers[box.index] = makeStepper(box, t_s, sheet_m2K_per_W(box), before);
  fleet.steppers[box.index].step_s = Math.min(before.step_s, 300);
  writeDown(fleet, box, t_s);
}

const isOf = (fleet: Fleet, act: BoxAct, box: Box): boolean =>
  act.do === "take out"
    ? fleet.lotTracks[fleet.lotIndex.get(act.lot) ?? -1]?.cooler === box.index
    : act.cooler === box.index;

/** Runs one box on its own to `to_s`, doing its acts among `acts` (in order of time) on the way. */
function runBox(fleet: Fleet, box: Box, acts: readonly BoxAct[], to_s: number): void {
  let t_s = fleet.t_s;
  const own = acts.filter((act) => isOf(fleet, act, box));
  for (let i = 0; i < own.length; ) {
    const at_s = Math.max(own[i].t_s, t_s);
    runSmooth(fleet, box, t_s, at_s);
    t_s = at_s;
    let changed = false;
    for (; i < own.length && own[i].t_s <= t_s; i++) changed = doAct(fleet, box, own[i]) || changed;
    if (changed) renew(fleet, box, t_s);
    else restart(box, fleet.steppers[box.index], t_s, sheet_m2K_per_W(box), 1);
  }
  runSmooth(fleet, box, t_s, to_s);
}

/**
 * Runs all coolers on to `until_s`, landing on every act and on every moment where an outside is not smooth. Boxes go
 * their own way between merges, so what happens to one is the same whatever else is packed; running on in pieces gives
 * the same answer within the step tolerance.
 *
 * @throws ModelError when no step settles
 */
export function runFleet(fleet: Fleet, until_s: number): void {
  for (;;) {
    const at = fleet.acts.findIndex((act, i) => i >= fleet.nextAct && act.do === "merge");
    const merge = at >= 0 && fleet.acts[at].t_s <= until_s ? (fleet.acts[at] as MergeAct) : null;
    const stop_s = merge === null ? until_s : Math.max(merge.t_s, fleet.t_s);
    let end = fleet.nextAct;
    while (end < (merge === null ? fleet.acts.length : at) && fleet.acts[end].t_s <= stop_s) end++;
    const acts = fleet.acts.slice(fleet.nextAct, end) as BoxAct[];
    for (const box of fleet.boxes) runBox(fleet, box, acts, stop_s);
    fleet.t_s = stop_s;
    fleet.nextAct = end;
    if (merge === null) return;
    const [from, into] = [fleet.boxes[merge.from], fleet.boxes[merge.into]];
    mergeBoxes(fleet, from, into);
    renew(fleet, from, stop_s);
    renew(fleet, into, stop_s);
    fleet.nextAct++;
  }
}
