/** Basis of a default that the resin's label overrides: a shop checks it against the label before the first run. */
export const fromLabel = "from your label; the default is common practice, no source";
