import { callsOf } from "../shared/xlsx/addincalls";
import { namespace } from "./catalogue";

/** Calls of the catalogue's functions in formulas. */
export const { asTyped, asStored, calledIn, isCalledIn: callsOurs, isOneCall } = callsOf(namespace);
