/** How hard the heartwood of a wood is to treat, by the classes of Wood Handbook Table 15-7. */
export type Resistance = "difficult" | "very difficult";

/**
 * From memory: the body of Table 15-7 could not be read, so the list is short, and holds only woods that are known to be hard to treat.
 * A wood that is not on it may still resist.
 */
const resistant: Readonly<Record<Resistance, readonly string[]>> = {
  "very difficult": [
    "white oak",
    "bur oak",
    "post oak",
    "swamp white oak",
    "Oregon white oak",
    "black locust",
    "Osage-orange",
    "western redcedar",
    "northern white cedar",
  ],
  difficult: [
    "Atlantic white cedar",
    "eastern redcedar",
    "incense cedar",
    "Port-Orford cedar",
    "yellow cedar",
    "coast Douglas-fir",
    "old-growth redwood",
  ],
};

export const resistanceOf = new Map<string, Resistance>(
  Object.entries(resistant).flatMap(([class_, names]) => names.map((name) => [name, class_ as Resistance] as const)),
);
