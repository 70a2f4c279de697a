/** The steps of a run in the order of the work: the run view, the sheet Today and the record all go by this one list. */
export interface Kind {
  readonly title: string;
  /** What the button says that ends it. */
  readonly done: string;
  /** One line of what can hurt here; the full cautions travel with the functions. */
  readonly caution: string;
  /** Counts down by the clock. */
  readonly timed?: true;
  /** Nobody has to be there. */
  readonly alone?: true;
  /** Once for the whole run, or once for each filling of the chamber. */
  readonly once?: true;
}

export const kinds = {
  choose: {
    title: "Choose and weigh",
    done: "Weighed",
    caution: "Wet wood steams: dry it first. Wear a dust mask when you cut spalted wood.",
    once: true,
  },
  safety: { title: "Safety", done: "All checked", caution: "Stop at the first point that you cannot tick.", once: true },
  mix: { title: "Mix and dye", done: "Mixed", caution: "Gloves, eye protection, moving air. No food at the bench.", once: true },
  load: { title: "Load with ballast", done: "Loaded", caution: "Stainless steel or glass ballast only. Leave the foam room empty." },
  vacuum: {
    title: "Vacuum",
    done: "Bubbles have stopped",
    caution: "Stay with it. Shield up. Pump slowly, a hand on the valve.",
    timed: true,
  },
  air: { title: "Let the air in, add resin", done: "Air is in", caution: "Open the valve slowly. Pump off, oil trap watched." },
  soak: {
    title: "Soak",
    done: "Soaked",
    caution: "Keep it cool, with air above it. Never store it under vacuum.",
    timed: true,
    alone: true,
  },
  drain: { title: "Drain and wrap", done: "Drained and wrapped", caution: "Gloves on. Only drained pieces go into the oven." },
  bake: { title: "Bake", done: "Out of the oven", caution: "Do not use a kitchen oven. Stay with it. No flame near.", timed: true },
  cool: { title: "Cool", done: "Cool", caution: "Hot cores burn and set resin. Keep them away from the tub.", timed: true, alone: true },
  weigh: { title: "Weigh", done: "Weighed", caution: "Bake a sticky piece again. Never turn it." },
  price: { title: "Price", done: "Finish the run", caution: "Waste resin, rags and gloves: as the safety data sheet says.", once: true },
} as const satisfies Readonly<Record<string, Kind>>;

export type KindName = keyof typeof kinds;
export const kindNames = Object.keys(kinds) as readonly KindName[];
export const kindOf = (name: KindName): Kind => kinds[name];
