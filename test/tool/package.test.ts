import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { versionText } from "../../src/version";
import type { Metadata } from "../../tool/metadata";
import { complete, type Order, orderOf, pack } from "../../tool/package";
import { rehosted } from "../built";

const root = join(__dirname, "../..");
const host = "https://club.example/porewise";
const id = "5a3c2f64-6c0f-4f5e-9f4e-2f4a0a3b7d11";
const asked = (...more: string[]) => orderOf(["--host", host, ...more]);

describe("what is asked for", () => {
  it("is a host, with the version and a fresh Id each time", () => {
    const [one, other] = [asked(), asked()];
    expect(one).toMatchObject({ host, version: versionText });
    expect(one.id).toMatch(/^[\da-f]{8}-[\da-f]{4}-4[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/);
    expect(one.id).not.toBe(other.id);
    expect(one).not.toHaveProperty("name");
  });

  it("may bring its own Id, name and folder", () =>
    expect(asked("--id", id.toUpperCase(), "--name", " Our club ", "-o", "/srv/club")).toMatchObject({
      id,
      name: "Our club",
      folder: "/srv/club",
    }));

  it.each([
    { args: [], words: "--host is missing" },
    { args: ["--host", "http://club.example"], words: "https only" },
    { args: ["--host", `${host}?v=1`], words: "leave out what follows the path" },
    { args: ["--host", host, "--id", "club-1"], words: "an Id is 32 digits" },
    { args: ["--host", host, "--name", " "], words: "--name takes the words" },
    { args: ["--host", host, "--name", "a\u0001b"], words: "--name takes the words" },
    { args: ["--host", host, "-o", ""], words: "-o takes the name of a folder" },
    { args: ["--host", host, "--colour", "red"], words: "npm run package -- --host" },
    { args: [host], words: "npm run package -- --host" },
  ])("$args is refused", ({ args, words }) => expect(() => orderOf(args)).toThrow(words));

  it("is refused in words alone, and the command fails", () => {
    const command = ["--import", "tsx", join(root, "tool/package.ts"), "--host", "http://club.example"];
    const { status, stderr, stdout } = spawnSync(process.execPath, command, { cwd: root, encoding: "utf8" });
    expect({ status, stderr, stdout }).toEqual({
      status: 1,
      stderr: "http://club.example: Excel loads add-ins over https only\n",
      stdout: "",
    });
  });
});

describe("the folder", () => {
  let aside: string;
  let order: Order;
  const file = (path: string) => readFileSync(join(order.folder, path), "utf8");
  const scratch = (name: string) => join(aside, name);

  beforeAll(async () => {
    aside = mkdtempSync(join(tmpdir(), "porewise-test-"));
    order = asked("--id", id, "--name", 'Turners & "Friends"', "-o", scratch("hosted"));
    await pack(order, rehosted);
  });
  afterAll(() => rmSync(aside, { recursive: true, force: true }));

  it("has a manifest with this host, Id, version and name, and no trace of the development host", () => {
    const xml = file("manifest.xml");
    expect(xml).toContain(`<Id>${id}</Id>`);
    expect(xml).toContain(`<Version>${versionText}.0</Version>`);
    expect(xml).toContain('<DisplayName DefaultValue="Turners &amp; &quot;Friends&quot;"/>');
    expect(xml).toContain(`"${host}/taskpane.html"`);
    expect(xml).not.toContain("localhost");
  });

  it("leads from every function to help on this host", () => {
    const { functions } = JSON.parse(file("functions.json")) as Metadata;
    expect(functions.length).toBeGreaterThan(30);
    for (const { id, helpUrl } of functions) expect(helpUrl).toBe(`${host}/help/${id.toLowerCase()}.html`);
  });

  it("carries the licence", () => expect(file("LICENSE")).toContain("MIT"));

  it.each(["icons/mark-16.png", "icons/mark-80.png", "functions.js"])("is refused without %s", (missing) => {
    const built = scratch("built");
    cpSync(order.folder, built, { recursive: true });
    rmSync(join(built, missing));
    rmSync(join(built, "manifest.xml"));
    expect(() => complete(built, order)).toThrow(`${host}/${missing}: there is no such file`);
    expect(() => readFileSync(join(built, "manifest.xml"))).toThrow("ENOENT");
    rmSync(built, { recursive: true });
  });

  it("may be an earlier package, in which what others added stays", async () => {
    writeFileSync(join(order.folder, "CNAME"), "club.example");
    await pack({ ...order, name: "Our club" }, async (made) => cpSync(order.folder, made, { recursive: true }));
    expect(file("manifest.xml")).toContain('<DisplayName DefaultValue="Our club"/>');
    expect(file("CNAME")).toBe("club.example");
  });

  it("stays as it was when something fails", async () => {
    const before = file("manifest.xml");
    const iconless = async (made: string) => {
      cpSync(order.folder, made, { recursive: true });
      rmSync(join(made, "icons/mark-32.png"));
    };
    await expect(pack({ ...order, name: "Other" }, iconless)).rejects.toThrow("Excel would refuse this package");
    expect(file("manifest.xml")).toBe(before);
  });

  it("is no folder of other files, and no file", async () => {
    writeFileSync(scratch("letter.txt"), "kept");
    await expect(pack({ ...order, folder: aside })).rejects.toThrow("holds other files");
    await expect(pack({ ...order, folder: scratch("letter.txt") })).rejects.toThrow("is a file");
    expect(readFileSync(scratch("letter.txt"), "utf8")).toBe("kept");
  });
});
