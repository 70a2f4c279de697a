import { optional, quantity } from "../../shared/argument";
import { argumentWords } from "../../shared/stub";
import { rows } from "../../shared/whole";
import { choice, text } from "../../shared/words";
import { cover } from "../../src/chamber/settings";

describe("an argument in one line", () => {
  it.each([
    [quantity("length", "height of the stack", 5, [0.01, 200]), "height of the stack (in, mm under SI; 0.01 to 200 in; such as 5)"],
    [quantity("volume", "volume", 104), "volume (in³, cm³ under SI; 0 in³ or more; such as 104)"],
    [quantity("weight", "weight", 104, [1, 100]), "weight (oz, g under SI, or as the scale reads; 1 to 100 oz; such as 104)"],
    [quantity("share", "moisture", 0.12, [0, 3]), "moisture (0 to 3; such as 0.12)"],
    [optional(quantity("minutes", "time", 30, [0, 60]), 5), "time (min; 0 to 60; such as 30; left out: 5)"],
    [choice("how it lies", ["upright", "lying"], "lying"), "how it lies (upright or lying)"],
    [text("species", "silver maple"), "species (such as silver maple)"],
    [rows("pieces", { label: text("label", "A"), count: text("count", "4") }), "pieces (rows of label, count)"],
    [cover, `${cover.label} (in, mm under SI; 0 to 100 in; such as 1; if left out: the shop's cover)`],
  ])("%#: $label", (arg, words) => expect(argumentWords(arg)).toBe(words));
});
