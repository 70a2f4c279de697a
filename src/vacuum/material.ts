import type { Arg } from "../../shared/argument";
import { badInput } from "../../shared/outcome";
import { findUnit } from "../../shared/unit";
import { text } from "../../shared/words";

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

/** It may be called by its first word. */
const namesOf = ({ name }: Material): string[] => [name, name.split(" ")[0]];

const known = new Map([castAcrylic, extrudedAcrylic].flatMap((material) => namesOf(material).map((name) => [name, material])));

/** The design stress in built-in spreadsheet syntax, of a name that stands for the material; no answer for any other. */
export function designTwin(word: string): string {
  const isOne = (names: readonly string[]) => `OR(${names.map((name) => `${word}="${name}"`).join(",")})`;
  const cast = `IF(${isOne(["", ...namesOf(castAcrylic)])},${castAcrylic.design}`;
  return `${cast},IF(${isOne(namesOf(extrudedAcrylic))},${extrudedAcrylic.design},NA()))`;
}

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
