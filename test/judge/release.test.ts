import { createHash } from "node:crypto";
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { unzipSync } from "fflate";
import { build } from "../../tool/build";
import { dist } from "../../tool/fresh";
import { development } from "../../tool/manifest";
import { release, zipped } from "../../tool/release";

const folder = mkdtempSync(join(tmpdir(), "release-"));
afterAll(() => rmSync(folder, { recursive: true }));

const hashes = (root: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(root, { recursive: true, encoding: "utf8" })
      .filter((path) => statSync(join(root, path)).isFile())
      .sort()
      .map((path) => [
        relative(root, join(root, path)),
        createHash("sha256")
          .update(readFileSync(join(root, path)))
          .digest("hex"),
      ]),
  );

it("a build is the same, byte for byte, whenever and wherever it is made", async () => {
  await build(join(folder, "built"));
  expect(hashes(join(folder, "built"))).toEqual(hashes(dist));
  expect(Buffer.compare(zipped(join(folder, "built")), zipped(dist))).toBe(0);
});

describe("a release", () => {
  const made = join(folder, "made");
  let names: string[];
  beforeAll(async () => {
    names = await release(dist, made, "https://club.example/porewise");
  });

  it("holds the page in one file, a zip for a host, the eight workbooks, notices and checksums", () => {
    expect(names.filter((name) => name.endsWith(".xlsx"))).toHaveLength(8);
    expect(names).toEqual(expect.arrayContaining(["porewise.html", "NOTICES.txt", "LICENSE", "CHANGELOG.md", "SHA256SUMS"]));
    const zip = unzipSync(readFileSync(join(made, names.find((name) => name.endsWith("-site.zip"))!)));
    expect(Object.keys(zip)).toEqual(expect.arrayContaining(["index.html", "taskpane.html", "functions.json", "manifest.xml", "_headers"]));
    const naming = (address: string) => Object.keys(zip).filter((name) => new TextDecoder().decode(zip[name]).includes(address));
    expect(naming(development)).toEqual([]);
    // Who has the zip alone is told to change these two.
    expect(naming("https://club.example/porewise/").filter((name) => !name.startsWith("help/"))).toEqual([
      "functions.json",
      "manifest.xml",
    ]);
  });

  it("names the right checksum of every file", () => {
    const own = hashes(made);
    const lines = readFileSync(join(made, "SHA256SUMS"), "utf8").trim().split("\n");
    expect(Object.fromEntries(lines.map((line) => line.split("  ").reverse()))).toEqual({ ...own, SHA256SUMS: undefined });
    expect(lines).toHaveLength(names.length - 1);
  });

  it("is the same when it is made again", async () => {
    await release(dist, join(folder, "again"), "https://club.example/porewise");
    expect(hashes(join(folder, "again"))).toEqual(hashes(made));
  });
});
