import { quantity } from "../../shared/argument";
import { setting } from "../../shared/settings";

export const scaleStep = setting(
  "scale step",
  quantity("step", "smallest weight the scale shows", 0.1, [0.0001, 1000]),
  0.1,
  "the scale's own display",
);

export const dryEnough = setting(
  "dry enough",
  quantity("share", "highest moisture that counts as dry", 0.1, [0, 0.3]),
  0.1,
  "common practice, no source: oven-dry takes most",
);

const grade = (name: string, least: number) =>
  setting(`${name} voids`, quantity("share", `least void share for the grade ${name}`, least, [0, 1]), least, "common practice, no source");
export const goodVoids = grade("good", 0.6);
export const fairVoids = grade("fair", 0.5);
export const poorVoids = grade("poor", 0.35);

export const reach = setting(
  "reach",
  quantity("length", "half thickness beyond which the center stays weak and pale", 1, [0.01, 100]),
  1,
  "common practice, no source",
);
