import * as engine from "@odoo/o-spreadsheet";
import { parameters } from "../../shared/contract";
import { evaluator } from "../../sheet/engine";
import { call, catalogue, cellName } from "../../src/catalogue";
import { near } from "../within";

const known = engine.registries.functionRegistry;
const answer = evaluator();

describe("functions in the sheet", () => {
  it("stand there all, for export too, with a help text for each argument", () => {
    for (const contract of catalogue) {
      const found = known.get(cellName(contract));
      expect(found.isExported).toBe(true);
      expect(found.args.map(({ name, optional }) => [name, optional ?? false])).toEqual(
        parameters(contract).map(([name, arg]) => [name, arg.optional ?? false]),
      );
      for (const { description, acceptMatrix, acceptErrors } of found.args) {
        expect(description.length).toBeGreaterThan(3);
        expect([acceptMatrix, acceptErrors]).toEqual([true, true]);
      }
    }
  });

  it("say in what unit a plain number is taken", () =>
    expect(known.get("PORE.FILL").args[1].description).toBe("height of the stack of pieces; in, or mm under SI; such as 5"));

  it("make #VALUE! an error that IFERROR and ISERROR see", () => {
    expect(answer("=ISERROR(PORE.MOISTURE(90,93))").value).toBe(true);
    expect(answer('=IFERROR(PORE.MOISTURE(90,93),"again")').value).toBe("again");
  });

  it("hand an error on", () => expect(answer("=PORE.FILL(6,1/0,104)").value).toMatchObject({ error: "#DIV/0!" }));
  it("see an argument left out between commas", () =>
    expect(answer('=PORE.FILL(6,,104,,"US")').value).toEqual(
      call(catalogue.find((c) => c.name === "FILL")!, [[[6]], undefined, [[104]]])[0][0],
    ));

  it("read a shop typed as an array", () => {
    near(answer('=PORE.DYE(2,,{"dye rate",0.5;"cover",2})').value, 1);
    expect(answer('=PORE.DYE(2,,{"dye rat",0.5})').value).toMatchObject({ error: "#VALUE!" });
  });

  it("carry their number format to the cell", () => {
    expect(answer("=PORE.MOISTURE(104,93)").texts()).toEqual([["11.8%"]]);
    expect(answer("=PORE.EXPIRY(46053)").texts()).toEqual([["2026-04-30"]]);
  });
});
