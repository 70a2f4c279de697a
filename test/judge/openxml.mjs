import { readFileSync } from "node:fs";
import { setFlagsFromString } from "node:v8";

// Tells what the Open XML SDK finds wrong in files, one list a file, as JSON. In a process of its own: it is an ES module, and keeps Node alive.

// Compiled well at once it starts in half the time, and a start is most of its work.
setFlagsFromString("--no-liftoff");
const { default: validate, ready } = await import("@ooxml-tools/validate");

await ready();
const found = [];
for (const path of process.argv.slice(2)) {
  const errors = await validate(new Uint8Array(readFileSync(path)), "xlsx");
  found.push(errors.map(({ description, path: { partUri, xpath } }) => `${partUri} ${xpath}: ${description}`));
}
process.stdout.write(JSON.stringify(found), () => process.exit(0));
