/** The steps of a run in the order of the work: the run view, the sheet Today and the record all go by this one list. */
export interface Kind {
  readonly title: string;
  /** Text of the button that ends it. */
  readonly done: string;
  /** One line on what can hurt here; the full cautions stand with the functions. */
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
    caution: "Dry wood only: wet wood steams.",
    once: true,
  },
  safety: { title: "Safety", done: "All checked", caution: "Stop at anything you cannot check off.", once: true },
  mix: { title: "Mix and dye", done: "Mixed", caution: "Gloves, eye protection, fresh air.", once: true },
  load: { title: "Load with ballast", done: "Loaded", caution: "Steel or glass ballast. Leave foam room." },
  vacuum: {
    title: "Vacuum",
    done: "Bubbles have stopped",
    caution: "Stay with it. Shield up. Go slowly.",
    timed: true,
  },
  air: { title: "Let the air in, add resin", done: "Air is in", caution: "Slowly, with a hand on the valve." },
  soak: {
    title: "Soak",
    done: "Soaked",
    caution: "Cool, air above it, never under vacuum.",
    timed: true,
    alone: true,
  },
  drain: { title: "Drain and wrap", done: "Drained and wrapped", caution: "Gloves on. Bake drained pieces only." },
  bake: { title: "Bake", done: "Out of the oven", caution: "No kitchen oven. Stay with it.", timed: true },
  cool: { title: "Cool", done: "Cool", caution: "Hot cores burn and set resin.", timed: true, alone: true },
  weigh: { title: "Weigh", done: "Weighed", caution: "Bake a sticky piece again." },
  price: { title: "Price", done: "Finish the run", caution: "Dispose of waste resin as its data sheet says.", once: true },
} as const satisfies Readonly<Record<string, Kind>>;

export type KindName = keyof typeof kinds;
export const kindNames = Object.keys(kinds) as readonly KindName[];
export const kindOf = (name: KindName): Kind => kinds[name];
