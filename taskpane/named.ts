import type { Contract } from "../shared/contract";
import { catalogue } from "../src/catalogue";

/** The function that the address of this page names: help in a spreadsheet leads to it. */
export function named(): Contract | undefined {
  const name = location.hash.slice(1).toUpperCase();
  return catalogue.find((contract) => contract.name === name);
}
