import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { dist } from "../../tool/fresh";
import { development, type Edition, hostedManifest } from "../../tool/manifest";
import { complete, orderOf } from "../../tool/package";

const root = join(__dirname, "../..");
const manifest = readFileSync(join(root, "manifest.xml"), "utf8");

const club: Edition = {
  host: "https://club.example/porewise/",
  id: "5a3c2f64-6c0f-4f5e-9f4e-2f4a0a3b7d11",
  version: "1.2.3",
  name: 'Turners & "Friends"',
};

/** As a package holds it, from its order on the command line. */
function packaged(): string {
  const folder = mkdtempSync(join(tmpdir(), "package-"));
  try {
    cpSync(dist, folder, { recursive: true });
    complete(folder, orderOf(["--host", club.host, "--name", club.name!]));
    return readFileSync(join(folder, "manifest.xml"), "utf8");
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const sound = { "as it stands": manifest, "on another host": hostedManifest(manifest, club), "in a package": packaged() };

const permissions = "<Permissions>ReadWriteDocument</Permissions>";
const broken = {
  "an unknown lifetime": manifest.replace('lifetime="long"', 'lifetime="ever"'),
  "a part out of its order": manifest.replace(permissions, "").replace("<Hosts>", `${permissions}<Hosts>`),
  "an Id that is none": manifest.replace(/<Id>.*<\/Id>/, "<Id>no Id</Id>"),
  "a group without a label": manifest.replace('<Label resid="Group.Label"/>', ""),
  "a name past 125 characters": manifest.replace('DisplayName DefaultValue="', `DisplayName DefaultValue="${"x".repeat(126)}`),
  "what is no XML": manifest.replace("</Hosts>", ""),
};

/** Errors that the published schemas find, by the name of the edition. */
function schemaErrors(editions: Readonly<Record<string, string>>): Record<string, string[]> {
  const command = [join(__dirname, "validate.mjs"), join(__dirname, "xsd/OfficeAppManifestV1_1.xsd")];
  const found = JSON.parse(execFileSync(process.execPath, command, { input: JSON.stringify(Object.values(editions)), encoding: "utf8" }));
  return Object.fromEntries(Object.keys(editions).map((name, i) => [name, found[i]]));
}

describe("the manifest under the published schemas", () => {
  let errors: Record<string, string[]>;
  beforeAll(() => {
    errors = schemaErrors({ ...sound, ...broken });
  });

  it.each(Object.keys(sound))("passes %s", (name) => expect(errors[name]).toEqual([]));
  it.each(Object.keys(broken))("does not pass with %s", (name) => expect(errors[name]).not.toEqual([]));
  it("names one development host throughout", () =>
    expect(new Set(manifest.match(/https:\/\/[^/"<]+(?=[/"<])/g))).toEqual(new Set([development])));
});
