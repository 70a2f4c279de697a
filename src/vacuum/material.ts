import { type Arg, text } from "../../shared/argument";
import { badInput } from "../../shared/outcome";
import { findUnit } from "../../shared/unit";

const psi = findUnit("pressure", "psi")!.factor;

/** What a lid may be made of, with what its makers publish for loads that stay on. */
export interface Material {
  readonly name: string;
  /** Continuous design stress, Pa. */
  readonly design: number;
}

/** Of acrylic at room temperature: Young's modulus, Pa, and Poisson's ratio. */
export const acrylic = { E: 450_000 * psi, nu: 0.35 };

export const castAcrylic: Material = { name: "cast acrylic", design: 1500 * psi };
const extrudedAcrylic: Material = { name: "extruded acrylic", design: 750 * psi };

const known = new Map(
  [castAcrylic, extrudedAcrylic].flatMap((material) => [material.name, material.name.split(" ")[0]].map((name) => [name, material])),
);

/** cast acrylic or extruded acrylic: nothing else is screened. */
export const materialArg: Arg<Material> = {
  label: "material of the lid",
  example: castAcrylic.name,
  choices: [castAcrylic.name, extrudedAcrylic.name],
  sample: () => `${castAcrylic.name} or ${extrudedAcrylic.name}`,
  say: (material: Material) => material.name,
  read: (cell, units) => {
    const word = text("material of the lid", castAcrylic.name).read(cell, units);
    const found = known.get(word.toLowerCase().replace(/[\s-]+/g, " "));
    if (found) return found;
    if (/glass/i.test(word))
      throw badInput`material of the lid: glass breaks without warning and is not screened: use a chamber and lid made and rated for vacuum`;
    throw badInput`material of the lid: no design stress for “${word}” is known here, only for cast acrylic and extruded acrylic: use a chamber and lid made and rated for vacuum`;
  },
};
