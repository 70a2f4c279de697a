import { atCore, atFace, block, secondsTo } from "../../../src/cure/block";
import published from "../../published/thermal.json";
import { near, within } from "../../within";
import { type Case, march, marchedTo } from "./finite";

const inch = 0.0254;
const rows = (quantity: string) => published.filter((row) => row.quantity === quantity) as any[];
const piece = ([thickness, width, length]: number[]) => ({
  thickness: thickness * inch,
  width: width * inch,
  length: length && length * inch,
});

/** A surface that is at the bath's temperature at once. */
const wetSteam = 1e9;
/** in²/s, saturated steam: the usual value for wood, from memory. */
const diffusivity = 0.00025 * inch ** 2;

describe("the block", () => {
  it.each(rows("bake_time_core_190F"))(
    "$inputs.block_in in at h $inputs.h, k $inputs.k_transverse: $expected min",
    ({ inputs, expected, tolerance }) => {
      const slabs = block(piece(inputs.block_in), inputs.h, inputs.k_transverse, inputs.rho_cp);
      const target = (inputs.air_F - inputs.target_F) / (inputs.air_F - inputs.T0_F);
      within(secondsTo(slabs, target) / 60, expected, tolerance);
    },
  );

  it.each(rows("maclean_rect_steam_time"))(
    "$inputs.a_in in square in steam: $expected min ($source)",
    ({ inputs, expected, tolerance }) => {
      const slabs = block(piece([inputs.a_in, inputs.b_in]), wetSteam, diffusivity, 1);
      within(secondsTo(slabs, (inputs.Ts_F - inputs.Tc_F) / (inputs.Ts_F - inputs.T0_F)) / 60, expected, tolerance);
    },
  );

  it.each(rows("steam_heating_time"))(
    "$inputs.section_in in steam lies among the measured $expected min ($source)",
    ({ inputs, expected }) => {
      const slabs = block(piece(inputs.section_in), wetSteam, diffusivity, 1);
      const minutes = secondsTo(slabs, (inputs.Tair_wet_F - inputs.target_center_F) / (inputs.Tair_wet_F - inputs.T0_F)) / 60;
      expect(minutes).toBeGreaterThanOrEqual(Math.min(...expected));
      expect(minutes).toBeLessThanOrEqual(Math.max(...expected));
    },
  );

  it.each([
    { sides: [0.75, 0.75, 5], h: 8 },
    { sides: [0.75, 0.75, 5], h: 20 },
    { sides: [1.5, 1.5, 5], h: 12 },
    { sides: [1, 2, 5], h: 20 },
    { sides: [2, 2, 6], h: 8 },
    { sides: [2, 4, 1], h: 12 },
    { sides: [0.25, 1, 3], h: 500 },
  ])("$sides in at h $h is within 3 % of explicit finite volumes", ({ sides, h }) => {
    const k = 0.145;
    const heat = 1.327e6;
    const finite: Case = { sides: sides.map((s) => s * inch) as never, k: [k, k, 1.8 * k], heat, h };
    const series = secondsTo(block(piece(sides), h, k, heat), 1 / 13);
    near(series, marchedTo(finite, 1 / 13), 0.03);
  });

  it("has core and widest face where finite volumes have them, all the way", () => {
    const sides = [1, 2, 5];
    const slabs = block(piece(sides), 20, 0.145, 1.327e6);
    march({ sides: sides.map((s) => s * inch) as never, k: [0.145, 0.145, 0.261], heat: 1.327e6, h: 20 }, (seconds, core, face) => {
      within(atCore(slabs, seconds), core, 0.01);
      within(atFace(slabs, piece(sides), seconds), face, 0.01);
      return seconds > 3600;
    });
  });

  it("takes the end grain for the face of a disc", () => {
    const disc = { thickness: 2 * inch, width: 2 * inch, length: 0.5 * inch };
    const slabs = block(disc, 20, 0.145, 1.327e6);
    march({ sides: [disc.length, disc.thickness, disc.width], k: [0.261, 0.145, 0.145], heat: 1.327e6, h: 20 }, (seconds, core, face) => {
      within(atCore(slabs, seconds), core, 0.01);
      within(atFace(slabs, disc, seconds), face, 0.01);
      return seconds > 1800;
    });
  });
});
