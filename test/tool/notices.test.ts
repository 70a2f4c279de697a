import { bundled, bundles } from "../../tool/bundle";
import { notices } from "../../tool/notices";
import { noteFile, shippedPackages } from "../../tool/shipped";

describe("the notices", () => {
  it("hold the packages that the bundler put into a script, and the files that are served as they are", async () => {
    expect(shippedPackages()).toEqual([]);
    await bundled(bundles[0]);
    noteFile("node_modules/@odoo/owl/dist/owl.iife.min.js");
    expect(shippedPackages()).toEqual(expect.arrayContaining(["@odoo/owl", "decimal.js", "zod"]));
    // Never shipped: it only builds.
    expect(shippedPackages()).not.toContain("esbuild");
    const text = notices(shippedPackages());
    expect(text).toMatch(/^@odoo\/owl \d+\.\d+\.\d+ \(LGPL-3\.0-only\)/);
    expect(text).toContain("Permission is hereby granted");
  });
});
