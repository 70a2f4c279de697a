import type { Contract } from "../../shared/contract";
import { plan } from "./plan";
import { shoppinglist } from "./shoppinglist";

export const planning: readonly Contract[] = [plan, shoppinglist];
