import { settingCell } from "./shopsheet";

const system = settingCell("units");
const scale = settingCell("scale reads");

/** Part of a formula: one text or the other, by the shop's units. */
export const bySystem = (us: string, si: string) => `IF(${system}="SI","${si}","${us}")`;

/** Part of a formula: the unit that plain weights are in. */
export const scaleUnit = `IF(${scale}="",${bySystem("oz", "g")},${scale})`;
