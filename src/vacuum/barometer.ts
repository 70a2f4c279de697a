import { quantity } from "../../shared/argument";
import { define } from "../../shared/contract";
import { as } from "../../shared/quantity";
import { cell } from "../../shared/result";
import { airRange } from "./air";
import { heightAbove, standardPressure, standardPressureTwin } from "./atmosphere";

/** Air pressure to expect at an altitude. */
export const barometer = define({
  name: "BAROMETER",
  per: "piece",
  asks: "What is the air pressure at my altitude?",
  args: { altitude: heightAbove("altitude") },
  shop: {},
  returns: cell(quantity("pressure", "air pressure", 24.64)),
  format: "0.00",
  equation: "101325 Pa × (1 − 0.0065 H/288.15)^5.2559, H = 6356766 m × {altitude} / (6356766 m + {altitude})",
  source: "US Standard Atmosphere, 1976, lowest layer (11 km): geometric altitude, brought to geopotential",
  accuracy: "the mean of a year and of middle latitudes: weather moves the air pressure by about 3 % either way",
  cautions: [],
  worked: { typed: [5280], gives: 24.63738747374336 },
  twin: standardPressureTwin("altitude"),
  trust: ({ altitude }) => airRange({ altitude, here: altitude }),
  run: ({ altitude }) => as(standardPressure(altitude)),
});
