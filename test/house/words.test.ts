import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";

const root = join(__dirname, "..", "..");

/** Every text file that a commit holds; a folder without git (a downloaded archive) has no list, and nothing to commit. */
function tracked(): string[] {
  try {
    return execFileSync("git", ["ls-files"], { cwd: root, encoding: "utf8" }).split("\n").filter(Boolean);
  } catch {
    return [];
  }
}

const texts = tracked().filter(
  (path) => /\.(ts|js|mjs|json|md|html|css|xml|sh)$|run$/.test(path) && !/package-lock\.json|judge\/xsd\//.test(path),
);

describe("what is committed", () => {
  it.each([
    [
      "a path of somebody's machine",
      new RegExp(`${["", "home", ""].join("/")}\\w|${["", "work", "main"].join("/")}|${["", "root", ""].join("/")}\\w`),
    ],
    ["the host of a package registry", new RegExp(["registry", "npmjs", "org"].join("\\."))],
    ["a picture for a word", /\p{Emoji_Presentation}/u],
  ])("holds no %s", (_, pattern) => {
    const found = texts.filter((path) => pattern.test(readFileSync(join(root, path), "utf8")));
    expect(found).toEqual([]);
  });
});
