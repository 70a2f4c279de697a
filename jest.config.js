// Packages that come as ES modules only.
const transformIgnorePatterns = ["/node_modules/(?!(?:hucre|stemmer)/)"];
const transform = { "\\.(?:ts|mjs)$|/stemmer/.+\\.js$": ["@swc/jest", { jsc: { target: "es2022" }, module: { type: "commonjs" } }] };
const project = (displayName, roots) => ({
  displayName,
  roots,
  transform,
  transformIgnorePatterns,
  testEnvironment: "node",
  testMatch: ["**/*.test.ts"],
});

module.exports = {
  projects: [
    project("unit", ["<rootDir>/test/shared", "<rootDir>/test/src", "<rootDir>/test/house"]),
    project("hosts", ["<rootDir>/test/sheet", "<rootDir>/test/fuzz", "<rootDir>/test/taskpane", "<rootDir>/test/tool"]),
    project("judge", ["<rootDir>/test/judge"]),
    project("e2e", ["<rootDir>/test/e2e"]),
  ],
};
