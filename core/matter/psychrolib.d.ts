/** The few functions of the moist-air library that `moistAir.ts` calls; it ships without types. */
declare module "psychrolib" {
  interface Psychrometrics {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(air_C: number): number;
    GetSatHumRatio(air_C: number, pressure_Pa: number): number;
    GetHumRatioFromRelHum(air_C: number, relative_frac: number, pressure_Pa: number): number;
    GetHumRatioFromTDewPoint(dewPoint_C: number, pressure_Pa: number): number;
    GetMoistAirEnthalpy(air_C: number, humidity_kg_per_kg: number): number;
    GetTWetBulbFromRelHum(air_C: number, relative_frac: number, pressure_Pa: number): number;
    GetTDewPointFromRelHum(air_C: number, relative_frac: number): number;
    GetStandardAtmPressure(elevation_m: number): number;
    GetMoistAirDensity(air_C: number, humidity_kg_per_kg: number, pressure_Pa: number): number;
  }
  const psychrolib: Psychrometrics;
  export default psychrolib;
}
