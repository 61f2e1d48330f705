import type { EnthalpyCurve } from "../matter/curve.ts";
import { requireFinite } from "../quantity/errors.ts";

export type BodyShape = "slab" | "cylinder" | "lump";

/**
 * A piece that heat gets into by conduction: a slab that gives off heat at both faces, a long cylinder, or a ball.
 * `curve` and `k_W_per_mK` have the same nodes. It is not a liquid that stirs itself, nor a piece with a bone.
 */
export interface SolidBody {
  readonly shape: BodyShape;
  /** Thickness of the slab, diameter of the cylinder or ball. */
  readonly thick_m: number;
  readonly density_kg_per_m3: number;
  readonly curve: EnthalpyCurve;
  /** Conductivity at each node of the curve. */
  readonly k_W_per_mK: ArrayLike<number>;
}

/** What a body stands in. */
export interface Bath {
  t_C: number;
  /** Air or water at the skin, package and radiation included. */
  film_W_per_m2K: number;
}

const LONGEST_S = 60 * 86_400;
/** Share of the largest stable step. */
const STEP_FRAC = 0.9;

/**
 * Time until the innermost part of a body, at one temperature to begin with, comes to `until_C`: conduction with freezing
 * and thawing as the enthalpy curve has them, in 3 to 20 shells, forward in time. Within 1 % of the exact series.
 * On a plateau it counts when the plateau is left behind, thawed through or frozen through.
 *
 * @param from_C −80…80
 * @param until_C −80…80
 * @returns seconds; 0 where it is past it already, null where it never comes to it, or not within 60 days
 * @source derivation
 */
export function centreTime_s(body: SolidBody, from_C: number, bath: Bath, until_C: number): number | null {
  checkBody(body, bath);
  requireFinite("from_C", from_C, -80, 80);
  requireFinite("until_C", until_C, -80, 80);
  const warming = bath.t_C > from_C;
  const sign = warming ? 1 : -1;
  if (sign * (from_C - until_C) >= 0) return 0;
  if (sign * (until_C - bath.t_C) >= 0) return null;
  const shells = new Shells(body, bath, from_C);
  const wanted = enthalpyAt(body.curve, until_C, warming);
  let before = shells.inner_J_per_kg;
  for (let t_s = 0; t_s < LONGEST_S; t_s += shells.step_s) {
    shells.advance();
    const after = shells.inner_J_per_kg;
    if (sign * (after - wanted) >= 0) return t_s + (shells.step_s * (wanted - before)) / (after - before);
    before = after;
  }
  return null;
}

function checkBody(body: SolidBody, bath: Bath): void {
  requireFinite("thick_m", body.thick_m, 1e-3, 1);
  requireFinite("density_kg_per_m3", body.density_kg_per_m3, 10, 3000);
  requireFinite("bath.t_C", bath.t_C, -80, 80);
  requireFinite("bath.film_W_per_m2K", bath.film_W_per_m2K, 0.1, 5000);
}

/** Enthalpy at a temperature; of a plateau its upper end on the way up, its lower end on the way down. */
function enthalpyAt({ t_C, h_J_per_kg }: EnthalpyCurve, at_C: number, upper: boolean): number {
  let i = 0;
  if (upper) while (i < t_C.length - 2 && t_C[i + 1]! <= at_C) i++;
  else while (i < t_C.length - 2 && t_C[i + 1]! < at_C) i++;
  return h_J_per_kg[i]! + slopeOf(t_C, h_J_per_kg, i) * (at_C - t_C[i]!);
}

function slopeOf(t_C: Float64Array, h_J_per_kg: Float64Array, i: number): number {
  return (h_J_per_kg[i + 1]! - h_J_per_kg[i]!) / (t_C[i + 1]! - t_C[i]!);
}

/** Shells of equal thickness from the middle to the skin, per square metre of slab, metre of cylinder, or radian². */
class Shells {
  readonly step_s: number;
  readonly #body: SolidBody;
  readonly #bath_C: number;
  /** Area of the outer face of each shell over its thickness, and of the skin with its film. */
  readonly #area: number[];
  readonly #volume: number[];
  readonly #h: Float64Array;
  readonly #t: Float64Array;
  readonly #k: Float64Array;
  readonly #segment: Int32Array;
  readonly #thick_m: number;
  readonly #film: number;

  constructor(body: SolidBody, bath: Bath, from_C: number) {
    const radius_m = body.thick_m / 2;
    const [kLeast, kMost] = rangeOf(body, Math.min(from_C, bath.t_C), Math.max(from_C, bath.t_C));
    const count = shellCount((bath.film_W_per_m2K * radius_m) / kLeast);
    this.#thick_m = radius_m / count;
    this.#body = body;
    this.#bath_C = bath.t_C;
    this.#film = bath.film_W_per_m2K;
    this.#area = Array.from({ length: count }, (_, i) => faceOf(body.shape, (i + 1) * this.#thick_m));
    this.#volume = Array.from({ length: count }, (_, i) => volumeOf(body.shape, i, this.#thick_m));
    this.#h = new Float64Array(count).fill(enthalpyAt(body.curve, from_C, bath.t_C < from_C));
    this.#t = new Float64Array(count);
    this.#k = new Float64Array(count);
    this.#segment = new Int32Array(count);
    const least = leastCapacity(body.curve, Math.min(from_C, bath.t_C), Math.max(from_C, bath.t_C));
    this.step_s = STEP_FRAC * this.#stableStep(kMost, least * body.density_kg_per_m3);
    for (let i = 0; i < count; i++) this.#read(i);
  }

  get inner_J_per_kg(): number {
    return this.#h[0]!;
  }

  #stableStep(k_W_per_mK: number, capacity_J_per_m3K: number): number {
    let step_s = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.#area.length; i++) {
      const inward = i === 0 ? 0 : this.#area[i - 1]! / this.#thick_m;
      const last = i === this.#area.length - 1;
      const outward = last ? this.#skin(k_W_per_mK) / k_W_per_mK : this.#area[i]! / this.#thick_m;
      step_s = Math.min(step_s, (capacity_J_per_m3K * this.#volume[i]!) / (k_W_per_mK * (inward + outward)));
    }
    return step_s;
  }

  /** Conductance from the middle of the outermost shell into the bath, W/K. */
  #skin(k_W_per_mK: number): number {
    return this.#area.at(-1)! / (1 / this.#film + this.#thick_m / 2 / k_W_per_mK);
  }

  /** Temperature and conductivity of a shell from its enthalpy. */
  #read(i: number): void {
    const { curve, k_W_per_mK } = this.#body;
    const { t_C, h_J_per_kg } = curve;
    const h = this.#h[i]!;
    let at = this.#segment[i]!;
    while (at < h_J_per_kg.length - 2 && h > h_J_per_kg[at + 1]!) at++;
    while (at > 0 && h < h_J_per_kg[at]!) at--;
    this.#segment[i] = at;
    const share = (h - h_J_per_kg[at]!) / (h_J_per_kg[at + 1]! - h_J_per_kg[at]!);
    this.#t[i] = t_C[at]! + share * (t_C[at + 1]! - t_C[at]!);
    this.#k[i] = k_W_per_mK[at]! + share * (k_W_per_mK[at + 1]! - k_W_per_mK[at]!);
  }

  advance(): void {
    const last = this.#h.length - 1;
    const perMass = this.step_s / this.#body.density_kg_per_m3;
    let inward_W = 0;
    for (let i = 0; i <= last; i++) {
      const outer_W = i === last ? this.#fromBath(last) : this.#between(i);
      this.#h[i] = this.#h[i]! + (perMass * (outer_W - inward_W)) / this.#volume[i]!;
      inward_W = outer_W;
    }
    for (let i = 0; i <= last; i++) this.#read(i);
  }

  #fromBath(i: number): number {
    return this.#skin(this.#k[i]!) * (this.#bath_C - this.#t[i]!);
  }

  /** Heat from shell i + 1 into shell i. */
  #between(i: number): number {
    const k = (2 * this.#k[i]! * this.#k[i + 1]!) / (this.#k[i]! + this.#k[i + 1]!);
    return ((k * this.#area[i]!) / this.#thick_m) * (this.#t[i + 1]! - this.#t[i]!);
  }
}

/** More shells where the inside, and not the film, holds heat back. */
function shellCount(biot: number): number {
  if (biot < 0.05) return 3;
  return biot < 0.3 ? 6 : biot < 1 ? 12 : 20;
}

function faceOf(shape: BodyShape, r_m: number): number {
  return shape === "slab" ? 1 : shape === "cylinder" ? r_m : r_m ** 2;
}

function volumeOf(shape: BodyShape, i: number, thick_m: number): number {
  if (shape === "slab") return thick_m;
  if (shape === "cylinder") return (i + 0.5) * thick_m ** 2;
  return ((3 * i ** 2 + 3 * i + 1) * thick_m * thick_m ** 2) / 3;
}

/** Least and largest conductivity between two temperatures. */
function rangeOf({ curve, k_W_per_mK }: SolidBody, low_C: number, high_C: number): [number, number] {
  let [least, most] = [Number.POSITIVE_INFINITY, 0];
  for (let i = 0; i < curve.t_C.length; i++) {
    const outside = (curve.t_C[i + 1] ?? low_C) < low_C || (curve.t_C[i - 1] ?? high_C) > high_C;
    if (outside) continue;
    least = Math.min(least, k_W_per_mK[i]!);
    most = Math.max(most, k_W_per_mK[i]!);
  }
  return [least, most];
}

/** Least heat capacity between two temperatures, J/kgK. */
function leastCapacity({ t_C, h_J_per_kg }: EnthalpyCurve, low_C: number, high_C: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < t_C.length - 1; i++)
    if (t_C[i + 1]! > low_C && t_C[i]! < high_C && t_C[i + 1]! > t_C[i]!)
      least = Math.min(least, slopeOf(t_C, h_J_per_kg, i));
  return least;
}
