/** Heat into the box by the way it came, J, and water, kg, since the lid was shut. Positive is into the box. */
export interface Books {
  lid_J: number;
  sides_J: number;
  base_J: number;
  seal_J: number;
  openingAir_J: number;
  openingExposure_J: number;
  /** Of which: what the sun on the outside and through the open lid drove in. */
  sun_J: number;
  /** Heat that the cold gas of dry ice took along (negative). */
  gas_J: number;
  /** Sum of |flow| over all of these: what the residual is measured against. */
  moved_J: number;
  /** Enthalpy of what was put in and what left, and of water drained. */
  putIn_J: number;
  tookOut_J: number;
  drained_J: number;
  /** Heat of the walls when the lid was shut, from 0 °C. */
  wallStart_J: number;
  /** Of these, what was food or drink. */
  foodIn_J: number;
  foodOut_J: number;
  iceIn_kg: number;
  iceOut_kg: number;
  waterIn_kg: number;
  waterOut_kg: number;
  drained_kg: number;
  condensed_kg: number;
  gas_kg: number;
}

export function emptyBooks(): Books {
  return {
    lid_J: 0,
    sides_J: 0,
    base_J: 0,
    seal_J: 0,
    openingAir_J: 0,
    openingExposure_J: 0,
    sun_J: 0,
    gas_J: 0,
    moved_J: 0,
    putIn_J: 0,
    tookOut_J: 0,
    drained_J: 0,
    wallStart_J: 0,
    foodIn_J: 0,
    foodOut_J: 0,
    iceIn_kg: 0,
    iceOut_kg: 0,
    waterIn_kg: 0,
    waterOut_kg: 0,
    drained_kg: 0,
    condensed_kg: 0,
    gas_kg: 0,
  };
}
