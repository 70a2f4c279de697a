import type { Contract } from "../../shared/contract";
import { piececost } from "./piececost";
import { pricetag } from "./pricetag";
import { runcost } from "./runcost";
import { splitcost } from "./splitcost";
import { whattobuy } from "./whattobuy";

export const cost: readonly Contract[] = [runcost, piececost, splitcost, pricetag, whattobuy];
