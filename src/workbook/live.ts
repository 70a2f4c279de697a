import { parameters } from "../../shared/contract";
import { literalOf } from "../../shared/formula";
import { namespace } from "../catalogue";
import { type Edition, isRef, noShop } from "./formula";
import { type Ref, refText } from "./place";

/** The name under which files keep a function of an add-in. */
const storedName = (name: string): string => `_xldudf_${namespace}_${name}`;

/** Formulas that call the functions; `shop` is the range of settings. */
export const live = (shop: Ref, name = storedName): Edition => ({
  name: "live",
  write({ contract, given, at }, from, row) {
    const all = parameters(contract).map(([key]) => {
      const value = given[key] ?? (key === "shop" ? shop : undefined);
      if (value === undefined || value === noShop) return "";
      return isRef(value) ? refText(key === "shop" ? { ...value, whole: true } : value, from, row) : literalOf(value);
    });
    while (all.length && all.at(-1) === "") all.pop();
    const call = `${name(contract.name)}(${all.join(",")})`;
    return at ? `INDEX(${call},${at.join(",")})` : call;
  },
});
