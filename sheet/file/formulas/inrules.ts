import { asStored, asTyped } from "../../../src/calls";

/** Rules and lists of a sheet may call our functions too. */

const formula = /(<formula[12]?>)([^<]*)/g;

export const withTypedRules = (xml: string): string =>
  xml.replace(formula, (_, tag, text) => tag + asTyped(text.replace(/_xlfn\.(?:_xlws\.)?/g, "")));

export const withStoredRules = (xml: string): string => xml.replace(formula, (_, tag, text) => tag + asStored(text));
