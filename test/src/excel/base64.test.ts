import { base64 } from "../../../src/excel/base64";

it("turns bytes into base64, however many", () => {
  const bytes = Uint8Array.from({ length: 100_000 }, (_, i) => i % 256);
  expect(base64(bytes)).toBe(Buffer.from(bytes).toString("base64"));
});
