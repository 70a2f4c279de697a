import { filledShare, filledWood, liquid } from "./filled";

/** The rise in kelvin if all the heat of cure (J/kg) stayed in the piece: f v ρr ΔH / ρc. */
export const selfHeating = (gravity: number, fullness: number, heatOfCure: number): number =>
  (filledShare(gravity, fullness) * liquid.density * heatOfCure) / filledWood(gravity, fullness).heat;
