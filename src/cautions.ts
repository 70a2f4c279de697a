/** The cautions, by what they are about. Contracts name them, and every host shows them where the number shows. */
export const cautions = {
  chamber:
    "A chamber can implode: use only one made and rated for vacuum, inspect it, and shield it from an audience. Flat walls collapse.",
  lid: "A lid can burst inward: a 9 in lid carries over 900 lb of air. No calculation certifies one: holes, notches, scratches, heat, solvent and aging are not in it. Use a chamber made and rated for vacuum.",
  pump: "Vent the pump outdoors and trap the vapour. A light monomer may boil before water does, so bubbles alone prove nothing.",
  ballast: "Use stainless steel or glass to hold pieces down: copper, zinc and rust may upset the catalyst.",
  resin:
    "Resin and catalyst: gloves, eye protection, ventilation. Uncured resin sensitises skin, so bake again rather than turn sticky wood.",
  storage:
    "Mixed resin needs air above it and a cool place, never storage under vacuum, never a warm piece. Thick, stringy or warm resin is finished whatever its date: dispose of it as its safety data sheet says.",
  oven: "Never an oven used for food, never left alone, drained pieces only, no flame near, ventilated: vapour can catch fire. Thick or bundled pieces can run hot and smoke.",
  "wet wood": "Wet wood steams: dry it first.",
  dust: "Dust of spalted wood and of cured resin: wear a mask made for fine dust and extract at the source.",
} as const;

export type Caution = keyof typeof cautions;

/** The same as commands for one line, the most pressing first. */
const brief: Readonly<Record<Caution, string>> = {
  oven: "Do not use a kitchen oven. Stay with it. Bake drained pieces only.",
  lid: "Use only a lid made and rated for vacuum.",
  chamber: "Use only a chamber rated for vacuum, behind a shield.",
  pump: "Vent the pump outdoors.",
  resin: "Wear gloves and eye protection. Ventilate.",
  storage: "Store mixed resin cool, with air above it.",
  ballast: "Weigh pieces down with stainless steel or glass only.",
  dust: "Wear a dust mask.",
  "wet wood": "Dry the wood first.",
};

/** Cautions as one line of commands; the first of all where there are none. */
export function briefly(keys: Iterable<string>): string {
  const said = new Set(keys);
  const words = Object.entries(brief).flatMap(([key, command]) => (said.has(key) ? [command] : []));
  return words.join(" ") || "Follow the makers' instructions and safety data sheets first.";
}

/** Ends every list of cautions. */
export const first = "Follow the makers' instructions and safety data sheets, local codes and licensed practice before any number here.";

/** The sentences a contract's cautions stand for. */
export const cautionsOf = (keys: readonly string[]): string[] =>
  keys.length ? [...keys.map((key) => cautions[key as Caution]), first] : [];
