import { readFileSync } from "node:fs";
import { join } from "node:path";
import { versionText } from "../../src/version";
import { manifestTroubles } from "../../tool/inspection";
import { development, hostAddress, hostedManifest } from "../../tool/manifest";

const root = join(__dirname, "../..");
const manifest = readFileSync(join(root, "manifest.xml"), "utf8");
const id = "5a3c2f64-6c0f-4f5e-9f4e-2f4a0a3b7d11";

/** Files as they will lie on the host; what the build makes counts as there. */
const read = (path: string): Uint8Array | undefined => {
  const [, icon] = /^icons\/(.*)$/.exec(path) ?? [];
  if (icon) return readFileSync(join(root, "assets", icon));
  return ["taskpane.html", "functions.js", "functions.json", "help/support.html"].includes(path) ? new Uint8Array(1) : undefined;
};

describe("the host of an add-in", () => {
  it.each([
    { typed: "https://club.example/porewise/", out: "https://club.example/porewise" },
    { typed: "https://club.example", out: "https://club.example" },
    { typed: "https://club.example:8443/a/b//", out: "https://club.example:8443/a/b" },
  ])("$typed is $out", ({ typed, out }) => expect(hostAddress(typed)).toBe(out));

  it.each([
    ["http://club.example", "https only"],
    ["https://club.example/?v=1", "leave out what follows the path"],
    ["https://club.example/porewise?", "leave out what follows the path"],
    ["https://club.example/#pane", "leave out what follows the path"],
    ["https://someone@club.example", "leave out the user name"],
    ["club.example", "is no address"],
  ])("%s is refused", (typed, words) => expect(() => hostAddress(typed)).toThrow(words));
});

describe("the manifest on another host", () => {
  const hosted = hostedManifest(manifest, { host: "https://club.example/porewise/", id, version: "1.2.3", name: 'Turners & "Friends"' });

  it("names that host in every address, and its origin as domain", () => {
    expect(hosted).not.toContain(development);
    expect(hosted).toContain('"https://club.example/porewise/functions.js"');
    expect(hosted).toContain("<AppDomain>https://club.example</AppDomain>");
  });
  it("carries id, version and name", () => {
    expect(hosted).toContain(`<Id>${id}</Id>`);
    expect(hosted).toContain("<Version>1.2.3.0</Version>");
    expect(hosted).toContain('<DisplayName DefaultValue="Turners &amp; &quot;Friends&quot;"/>');
    expect(hosted).toContain('<bt:String id="Open.Label" DefaultValue="Turners &amp; &quot;Friends&quot;"/>');
  });
  it("is sound", () => expect(manifestTroubles(hosted, "https://club.example/porewise", read)).toEqual([]));
  it("keeps its name where none is given", () =>
    expect(hostedManifest(manifest, { host: "https://club.example", id, version: "1.2.3" })).toContain(
      '<DisplayName DefaultValue="Porewise"/>',
    ));
});

describe("what the schemas do not see", () => {
  it("is in order as the manifest stands", () => expect(manifestTroubles(manifest, development, read)).toEqual([]));
  it("includes the version of the functions", () => expect(manifest).toContain(`<Version>${versionText}.0</Version>`));

  it.each([
    [
      '<bt:Url id="Functions.Script.Url"',
      '<bt:Url id="Functions.Scripts"',
      "SourceLocation names Functions.Script.Url, which is no Url resource",
    ],
    ['<bt:Url id="Functions.Script.Url"', '<bt:Url id="Functions.Scripts"', "the resource Functions.Scripts is used nowhere"],
    ['Label resid="Group.Label"', 'Label resid="Pane.Url"', "Label names Pane.Url, which is no String resource"],
    ['String id="Start.Title"', 'String id="Group.Label"', "the resource Group.Label stands twice"],
    ['FunctionFile resid="Pane.Url"', 'FunctionFile resid="Functions.Script.Url"', "DesktopFormFactor does not share the runtime Pane.Url"],
    [
      `${development}/functions.js"`,
      'http://localhost:3000/functions.js"',
      `http://localhost:3000/functions.js is not under ${development}`,
    ],
    [
      `${development}/functions.js"`,
      `${development}/functions.js?v=2"`,
      `${development}/functions.js?v=2: an address of a file ends with its name`,
    ],
    [`${development}/functions.js"`, `${development}/function.js"`, `${development}/function.js: there is no such file`],
    ["icons/mark-80.png", "icons/mark-64.png", `${development}/icons/mark-64.png is no PNG of 80 by 80`],
    ["icons/mark-32.png", "icons/mark-16.png", `${development}/icons/mark-16.png is no PNG of 32 by 32`],
    ["icons/mark-16.png", "icons/mark.svg", `${development}/icons/mark.svg is no PNG of 16 by 16`],
    ['DefaultValue="PORE"', 'DefaultValue="PORES"', "the functions' namespace is PORES where PORE is due"],
  ])("%s as %s", (right, wrong, words) => {
    expect(manifest).toContain(right);
    expect(manifestTroubles(manifest.replace(right, wrong), development, read)).toContain(words);
  });

  it("includes the length of a resource's name", () => {
    const long = "Open.".repeat(7);
    expect(manifestTroubles(manifest.replaceAll("Open.Label", long), development, read)).toContain(`${long} has more than 32 characters`);
  });
});
