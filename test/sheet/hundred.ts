import { version } from "../../sheet/enginedata";
import { blanks, shop } from "../../src/demo";

/** The rows of the pieces, and below them some that are kept for more. */
const first = 8;
const last = first + blanks.length - 1;
const spare = last + 20;

const column = (letter: string) => `${letter}${first}:${letter}${spare}`;
const down = <K extends keyof (typeof blanks)[number]>(letter: string, key: K) =>
  blanks.map((piece, i) => [`${letter}${first + i}`, String(piece[key])] as const);

/** A shop's own sheet of a hundred blanks, a row a piece and one formula a column, in the engine's form. */
export const hundred = (): object => ({
  version,
  sheets: [
    {
      id: "blanks",
      name: "Blanks",
      colNumber: 20,
      rowNumber: spare + 10,
      cells: {
        F4: `=SUMPRODUCT(ISERROR(M${first}:M${last})*1)`,
        ...Object.fromEntries([
          ...down("A", "label"),
          ...down("B", "species"),
          ...down("C", "condition"),
          ...down("D", "thickness"),
          ...down("E", "width"),
          ...down("F", "length"),
          ...down("H", "weight"),
          ...down("I", "dryWeight"),
          ...blanks.map((_, i) => [`G${first + i}`, `=D${first + i}*E${first + i}*F${first + i}`]),
        ]),
        [`J${first}`]: `=PORE.MOISTURE(${column("H")},${column("I")})`,
        [`K${first}`]: `=PORE.GRAVITY(${column("B")})`,
        [`L${first}`]: `=PORE.VOIDS(${column("K")},${column("J")})`,
        [`M${first}`]: `=PORE.UPTAKE(${column("G")},${column("K")},,${column("J")},MyShop)`,
        [`N${first}`]: `=PORE.BAKE(${column("D")},${column("E")},${column("F")},${column("K")},MyShop)`,
      },
    },
    {
      id: "shop",
      name: "My Shop",
      cells: Object.fromEntries(
        [["setting", "here"], ...Object.entries(shop)].flatMap(([name, value], i) => [
          [`A${i + 1}`, String(name)],
          [`B${i + 1}`, String(value)],
        ]),
      ),
    },
  ],
  namedRanges: { MyShop: `My Shop!A1:B${Object.keys(shop).length + 1}` },
});
