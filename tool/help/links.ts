import type { Contract } from "../../shared/contract";
import { catalogue } from "../../src/catalogue";
import { escaped } from "./markup";

export const linkTo = (contract: Contract): string => `<a href="${contract.name.toLowerCase()}.html">${escaped(contract.asks)}</a>`;
export const named = (names: readonly string[]): Contract[] => names.flatMap((name) => catalogue.find((own) => own.name === name) ?? []);
