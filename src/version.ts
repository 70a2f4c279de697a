import { define } from "../shared/contract";
import { cell } from "../shared/result";
import { text } from "../shared/words";

/** The same as in package.json and manifest.xml: a test holds the three together. */
export const versionText = "0.2.0";

export const version = define({
  name: "VERSION",
  per: "call",
  asks: "Which version of Porewise is this?",
  args: {},
  returns: cell(text("version", versionText)),
  format: "General",
  equation: "the version text",
  source: "Porewise's own",
  accuracy: "exact",
  cautions: [],
  worked: { typed: [], gives: versionText },
  run: () => versionText,
});
