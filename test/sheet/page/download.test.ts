jest.mock("../../../sheet/page/vendor", () => ({ engine: {} }));

import { fileName } from "../../../sheet/page/download";

describe("the name of a downloaded file", () => {
  it.each([
    ["Winter batch", "Winter batch.xlsx"],
    ["3/4 in: birch?", "3-4 in- birch-.xlsx"],
    ['a\\b*c"d<e>f|g', "a-b-c-d-e-f-g.xlsx"],
  ])("of %s is %s", (name, file) => expect(fileName(name)).toBe(file));
  it("ends as is asked", () => expect(fileName("Winter", "json")).toBe("Winter.json"));
});
