/** The weather at one instant in the open, away from any shade. */
export interface WeatherSample {
  air_C: number;
  dewPoint_C: number;
  /** Station wind, 10 m above open ground. */
  wind_m_per_s: number;
  cloud_frac: number;
  /** Global irradiance on a level surface. */
  global_W_per_m2: number;
  /** Its diffuse part. */
  diffuse_W_per_m2: number;
  /** Sun above the horizon, degrees; negative at night. */
  sunHeight_deg: number;
  pressure_Pa: number;
}

/** Weather as a function of time; `t_s` counts from departure and may be negative. Fills and returns `out`. */
export interface Weather {
  at(t_s: number, out?: WeatherSample): WeatherSample;
  /** Mean air temperature of the local day that holds `t_s`. */
  dayMean_C(t_s: number): number;
  /** Times between `from_s` and `to_s` of sunrise and sunset, for pictures and for parked cars. */
  sunTimes(from_s: number, to_s: number): { rise_s: number[]; set_s: number[] };
}

export type PlaceKind =
  | "cabin"
  | "closed car"
  | "trunk"
  | "truck bed"
  | "roof"
  | "raft"
  | "boat"
  | "tent"
  | "indoors"
  | "camp";
export type GroundKind = "soil" | "sand" | "grass" | "rock" | "snow" | "carpet" | "boards" | "water";

/** One stretch of time that a cooler stands in one place. */
export interface Stay {
  place: PlaceKind;
  from_s: number;
  to_s: number;
  /** Share of the sky and sun taken away, 0…1; null: the place's own. */
  shade_frac: number | null;
  ground: GroundKind | null;
  /** Known air there, instead of the place's own rule. */
  air_C: number | null;
  /** River or sea under a raft or hull. */
  water_C: number | null;
  /** Fresh air of a closed place, changes of its air per hour; left out or null: not known. */
  airChanges_per_h?: number | null;
}

/**
 * What the outer faces of a box see at one instant, before its own colour, cover and walls are known.
 * `lidSun` and `sideSun` are irradiances that reach the face (beam + diffuse + ground-reflected), after shade.
 */
export interface Surroundings {
  air_C: number;
  humidity_kg_per_kg: number;
  pressure_Pa: number;
  /** Wind at the box. */
  wind_m_per_s: number;
  lidSun_W_per_m2: number;
  /** Mean over four walls of unknown azimuth. */
  sideSun_W_per_m2: number;
  /** Black-body temperature of what the lid radiates to. */
  lidRadiant_C: number;
  sideRadiant_C: number;
  /** What the base stands on, and the contact resistance to it. */
  ground_C: number;
  groundResistance_m2K_per_W: number;
}
