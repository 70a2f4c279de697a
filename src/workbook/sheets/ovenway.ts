import { type Formula, formula } from "../formula";
import type { Shop } from "./shop";

/** How pieces are prepared for the oven, by the setting that the bake is calculated with. */
export const wayWords = (shop: Shop): Formula => {
  const way = shop.holds("in the oven");
  return formula`IF(${way}="foil","each piece wrapped in foil, as set on My Shop",IF(${way}="fan","bare and spaced, with a fan, as set on My Shop","bare and spaced, as set on My Shop"))`;
};
