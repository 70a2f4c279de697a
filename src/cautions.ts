/** The cautions, by what they are about. Contracts name them, and every host shows them where the number shows. */
export const cautions = {
  chamber:
    "A chamber can implode. Use only one made and rated for vacuum, inspect it before every run, and put a shield between it and people. Flat walls collapse.",
  lid: "A lid can burst inward: a 9 in lid carries over 900 lb of air. No calculation approves one: holes, notches, scratches, heat, solvent and age are not in it. Use a chamber and lid made and rated for vacuum.",
  pump: "Vent the pump outdoors and trap the vapor. The resin itself may boil before water does, so bubbles alone prove nothing.",
  ballast: "Use stainless steel or glass to hold pieces down: copper, zinc and rust may upset the catalyst.",
  resin:
    "Resin and catalyst: wear gloves and eye protection, and ventilate. Uncured resin can make skin allergic for life. Bake sticky pieces again; do not turn them.",
  storage:
    "Store mixed resin cool, with air above it, never under vacuum. Never put a warm piece in it. Thick, stringy or warm resin is finished, whatever its date: dispose of it as its safety data sheet says.",
  oven: "Do not use an oven that is used for food. Stay with it. Bake drained pieces only. Ventilate, and keep flames away: vapor can catch fire. Thick or bundled pieces can overheat and smoke.",
  "wet wood": "Wet wood makes steam. Dry it first.",
  dust: "Dust from spalted wood and cured resin harms the lungs. Wear a fine-dust mask and collect dust at the source.",
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
