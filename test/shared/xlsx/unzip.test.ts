import { strToU8, zipSync } from "fflate";
import { workbookOf } from "../../../shared/xlsx/parts";
import { unzip } from "../../../shared/xlsx/unzip";

const wide = (word: string) => [...word].flatMap((letter) => [letter.charCodeAt(0), 0]);
const compound = (...names: string[]) => new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...names.flatMap(wide), 0, 0]);

/** Numbered rows, which pack about ten to one. */
const plain = (length: number) => {
  let text = "";
  for (let row = 1; text.length < length; row++) text += `<row r="${row}"><c r="A${row}"><v>${(row * 7919) % 1000}</v></c></row>`;
  return strToU8(text.slice(0, length));
};

/** A copy in which the size that the first entry claims for itself is another. */
function lying(file: Uint8Array, claimed: number): Uint8Array {
  const copy = file.slice();
  const view = new DataView(copy.buffer);
  const end = copy.length - 22;
  view.setUint32(view.getUint32(end + 16, true) + 24, claimed, true);
  return copy;
}

describe("a package", () => {
  it("unpacks part by part in the order of the file, packed or stored", () => {
    const parts = unzip(zipSync({ "b.xml": strToU8("<b/>"), "a.xml": [strToU8("<a/>"), { level: 0 }], "empty.xml": new Uint8Array() }));
    expect([...parts].map(([path, bytes]) => [path, new TextDecoder().decode(bytes)])).toEqual([
      ["b.xml", "<b/>"],
      ["a.xml", "<a/>"],
      ["empty.xml", ""],
    ]);
  });

  it.each([
    { what: "notes", bytes: strToU8("two quarts left"), words: "it is not a workbook" },
    { what: "nothing", bytes: new Uint8Array(), words: "it is not a workbook" },
    { what: "a locked workbook", bytes: compound("Root Entry", "EncryptedPackage"), words: /has a password/ },
    { what: "an old workbook", bytes: compound("Root Entry", "Workbook"), words: /old-style workbook \(\.xls\)/ },
    { what: "half a workbook", bytes: zipSync({ "a.xml": plain(900) }).slice(0, 60), words: /damaged/ },
  ])("that is $what is refused in words", ({ bytes, words }) => expect(() => unzip(bytes)).toThrow(words));

  it("that is packed beyond 200 to 1 is refused", () =>
    expect(() => unzip(zipSync({ "xl/workbook.xml": strToU8("<workbook/>"), "bomb.xml": new Uint8Array(4_000_000) }))).toThrow(
      /200 times/,
    ));

  it("that holds one such part among honest ones is refused too", () => {
    const honest = Uint8Array.from({ length: 100_000 }, (_, i) => ((i * 7919) % 251) ^ (i >> 7));
    const file = zipSync({ "picture.bin": [honest, { level: 0 }], "bomb.xml": new Uint8Array(6_000_000) });
    expect(6_100_000 / file.length).toBeLessThan(200);
    expect(() => unzip(file)).toThrow(/200 times/);
  });

  it("of more than 100 MB is refused however honest it is", () => {
    const piece: [Uint8Array, { level: 0 }] = [plain(1_100_000), { level: 0 }];
    const file = zipSync(Object.fromEntries(Array.from({ length: 100 }, (_, i) => [`${i}.xml`, piece])));
    expect(() => unzip(file)).toThrow(/100 MB/);
  });

  it("is stopped on the way, whatever size it claims", () => {
    const bomb = zipSync({ "bomb.xml": new Uint8Array(150_000_000) });
    const before = process.memoryUsage().arrayBuffers;
    expect(() => unzip(lying(bomb, 100))).toThrow(/200 times/);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(100_000_000);
  });

  it("whose part is not as long as it says is refused", () =>
    expect(() => unzip(lying(zipSync({ "a.xml": plain(900) }), 800))).toThrow(/damaged/));

  it.each([
    { what: "OpenDocument file", part: "mimetype", text: "application/vnd.oasis.opendocument.spreadsheet", words: /OpenDocument/ },
    { what: "binary workbook", part: "xl/workbook.bin", text: "\u0083", words: /\.xlsb/ },
    { what: "text document", part: "word/document.xml", text: "<w/>", words: "it is not a workbook" },
  ])("that is a $what is no workbook", ({ part, text, words }) =>
    expect(() => workbookOf(unzip(zipSync({ [part]: strToU8(text) })))).toThrow(words),
  );
});
