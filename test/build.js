const { spawnSync } = require("node:child_process");
const { join } = require("node:path");

/** One build before the tests that read dist/, and none where it is what the sources make of it. */
module.exports = () => {
  const root = join(__dirname, "..");
  const { status } = spawnSync(process.execPath, ["--import", "tsx", "tool/fresh.ts"], {
    cwd: root,
    stdio: ["ignore", "ignore", "inherit"],
  });
  if (status !== 0) throw new Error("the build failed: it says above why");
};
