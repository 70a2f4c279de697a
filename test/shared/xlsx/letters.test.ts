import { letters } from "../../../shared/xlsx/letters";

it.each([
  { index: 0, name: "A" },
  { index: 25, name: "Z" },
  { index: 26, name: "AA" },
  { index: 701, name: "ZZ" },
  { index: 702, name: "AAA" },
])("column $index is called $name", ({ index, name }) => expect(letters(index)).toBe(name));
