/**
 * Specific enthalpy against temperature for one material, as a polyline.
 *
 * It is the state equation of a thing that neither gains nor loses mass: temperature follows from enthalpy,
 * through freezing too. It is not a heat-capacity table: a melting plateau is a segment with (nearly) equal
 * temperatures and rising enthalpy.
 *
 * Both arrays have the same length ≥ 2; `h_J_per_kg` rises strictly, `t_C` never falls.
 * Enthalpy is 0 for the unfrozen material at 0 °C.
 */
export interface EnthalpyCurve {
  readonly t_C: Float64Array;
  readonly h_J_per_kg: Float64Array;
}
