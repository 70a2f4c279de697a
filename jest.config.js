// Packages that come as ES modules only.
const transformIgnorePatterns = ["/node_modules/(?!(?:hucre|stemmer)/)"];
const transform = { "\\.(?:ts|mjs)$|/stemmer/.+\\.js$": ["@swc/jest", { jsc: { target: "es2022" }, module: { type: "commonjs" } }] };
// Code under test runs in a context of its own, where every look at a global goes the long way round: these are handed in.
const sandboxInjectedGlobals = [
  "Array",
  "Boolean",
  "Error",
  "Float64Array",
  "Int32Array",
  "JSON",
  "Map",
  "Math",
  "Number",
  "Object",
  "RegExp",
  "Set",
  "String",
  "Symbol",
  "Uint8Array",
];
const project = (displayName, roots, more) => ({
  displayName,
  roots: roots.map((root) => `<rootDir>/test/${root}`),
  transform,
  transformIgnorePatterns,
  sandboxInjectedGlobals,
  testEnvironment: "node",
  testMatch: ["**/*.test.ts"],
  setupFilesAfterEnv: ["<rootDir>/test/patience.js"],
  ...more,
});
/** These read dist/. */
const built = { globalSetup: "<rootDir>/test/build.js" };
/** Browsers and other programs answer when a busy machine lets them: what fails is tried once more, and the report shows both. */
const twice = { ...built, setupFilesAfterEnv: ["<rootDir>/test/patience.js", "<rootDir>/test/twice.js"] };

module.exports = {
  maxWorkers: "100%",
  projects: [
    project("unit", ["shared", "src", "house"]),
    project("hosts", ["sheet", "fuzz", "taskpane", "tool"], built),
    project("judge", ["judge"], twice),
    project("e2e", ["e2e"], twice),
  ],
};
