import { withCommas } from "../../../shared/xlsx/separators";

it.each([
  ["=PORE.FILL(6,5.5,104)", "=PORE.FILL(6;5,5;104)"],
  ['=PORE.BAKE("3/4 in",,2,"a, b")', '=PORE.BAKE("3/4 in";;2;"a, b")'],
  ['=PORE.FILL(6,5,104,,{"cover",0.5;"gap",.1})', '=PORE.FILL(6;5;104;;{"cover"\\0,5;"gap"\\,1})'],
  ["=PORE.DYE('My, Shop'!A1,MyShop)", "=PORE.DYE('My, Shop'!A1;MyShop)"],
])("%s is typed %s where numbers have a comma", (formula, typed) => expect(withCommas(formula)).toBe(typed));
