import { plainUnits } from "../../../shared/unit";
import { fill } from "../../../src/chamber/fill";
import { bake } from "../../../src/cure/bake";
import { expiry } from "../../../src/resin/expiry";
import { uptake } from "../../../src/resin/uptake";
import { fullVacuum } from "../../../src/vacuum/fullvacuum";
import { aroundAsk, ask, askedAs, formula, textLiteral, written } from "../../../src/workbook/formula";
import { readShop } from "../../../src/workbook/kit";
import { live } from "../../../src/workbook/live";
import { refTo } from "../../../src/workbook/place";
import { plain } from "../../../src/workbook/plain";

const shop = refTo("My Shop", 14, 0, 50, 2);
const [a, b, c] = [0, 1, 2].map((column) => refTo("Blanks", 1, column, 5));
const inCells = live(shop, (name) => `PORE.${name}`);
const held = refTo("My Shop", 20, 4);
const built = (system: "US" | "SI") =>
  plain({
    units: plainUnits(system, "g"),
    setting: () => held,
    standard: (setting, of) => readShop([["units", of]]).get(setting),
  });

describe("with the functions", () => {
  it("names the shop last, and leaves the place of an argument empty that is not given", () =>
    expect(written(ask(uptake, { solids: a, gravity: b, moisture: c }), inCells, "Blanks")).toBe(
      "PORE.UPTAKE(A2:A6,B2:B6,,C2:C6,'My Shop'!$A$15:$B$64)",
    ));

  it("carries the name under which files keep a function", () =>
    expect(written(ask(bake, { thickness: 0.75 }), live(shop), "Blanks")).toBe("_xldudf_PORE_BAKE(0.75,,,,'My Shop'!$A$15:$B$64)"));

  it("asks a worked example as it is typed, without a shop", () =>
    expect(written(aroundAsk(askedAs(fill, [6, 5, 104])), inCells, "Self-check")).toBe("PORE.FILL(6,5,104)"));

  it("speaks of one row where a formula stands in each", () =>
    expect(written(formula`IF(${a}="","",${ask(uptake, { solids: a, gravity: b })})`, inCells, "Blanks", 2)).toBe(
      'IF(A4="","",PORE.UPTAKE(A4,B4,,,\'My Shop\'!$A$15:$B$64))',
    ));
});

describe("without them", () => {
  it("is the twin where its cells hold what the function takes, settings by their cells, what may be blank with what then counts", () =>
    expect(written(ask(uptake, { solids: a, gravity: b, moisture: c }), built("SI"), "Blanks", 0)).toBe(
      'IF(AND(OR(C2="",AND(ISNUMBER(C2),C2>=0,C2<=3)),AND(ISNUMBER(B2),B2>=0.05,B2<=1.54),AND(ISNUMBER(A2),A2>=0.016387064,A2<=16387064)),(IF(OR(IF(C2="",0,C2)>0.3*(1+1E-9),(1-B2/(1+0.265*B2*MIN(1,IF(C2="",0,C2)/0.3))*(1/1.54+IF(C2="",0,C2)))<=1E-9),NA(),((A2*0.000001)*(1-B2/(1+0.265*B2*MIN(1,IF(C2="",0,C2)/0.3))*(1/1.54+IF(C2="",0,C2))))*\'My Shop\'!$E$21))/0.001,NA())',
    ));

  it("reads a date typed as text as its serial, and a setting as it comes where no shop is asked", () =>
    expect(written(aroundAsk(askedAs(expiry, ["2026-01-31"])), built("SI"), "Self-check")).toBe("(EDATE(46053,3))"));

  it("has none where the contract has no twin, unless the book brings its own", () => {
    expect(written(ask(bake, { thickness: a }), built("US"), "Blanks", 0)).toBeUndefined();
    expect(written(ask(bake, { thickness: a }, formula`40*${a}`), built("US"), "Blanks", 0)).toBe("(40*A2)");
  });

  it("has none where the twin passes over something that is given", () => {
    expect(written(ask(fullVacuum, {}), built("US"), "Today")).toContain("6356766");
    expect(written(ask(fullVacuum, { altitude: 5280 }), built("US"), "Today")).toBeUndefined();
  });
});

it("a text in a formula is cut into what every program takes, and holds no doubled quotes", () => {
  expect(textLiteral('no wood called "x"')).toBe('"no wood called “x”"');
  expect(textLiteral("a".repeat(300))).toBe(`"${"a".repeat(250)}"&"${"a".repeat(50)}"`);
});
