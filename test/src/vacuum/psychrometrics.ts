/** A general-purpose library of moist air, after ASHRAE Fundamentals, as an outside judge. */
const library = require("psychrolib");
library.SetUnitSystem(library.SI);

/** Air pressure in Pa at an altitude in metres. */
export const standardAir = (metres: number): number => library.GetStandardAtmPressure(metres);

/** Saturation pressure of water in Pa at a temperature in °C: Hyland and Wexler. */
export const saturation = (celsius: number): number => library.GetSatVapPres(celsius);
