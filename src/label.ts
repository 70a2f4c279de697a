/** Where a default comes from that the maker of the resin knows better: a shop checks it against the label before the first run. */
export const fromLabel = "from your label; the default is common practice, no source";
