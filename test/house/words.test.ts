import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { sentences } from "../../tool/sentences";

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

/** Words that were said otherwise once: see tool/sentences.ts for every sentence that a person can meet. */
const gone: readonly (readonly [string, RegExp])[] = [
  [
    "sounds translated",
    /\b(what holds|what stands in|stands there|what comes of it|nobody there|somebody is there|good that day|bears how much|spells of work|is among your downloads|under way still|four fifths)\b/i,
  ],
  [
    "is clever",
    /\b(honest range|how far to trust it|what went in, and what was met|which proves nothing|these very pieces|the wood drinks)\b/i,
  ],
  ["asks oddly", /\b(until when is|must this lid be refused|how deep will the gauge go|what do I ask for it|up here\?)/i],
  ["is a button that is no verb", /^(Leave it|Keep it|Keep it all|Make it|Go on|Use the selection|Put it into the cell)$/],
  ["is a programmer's or an edition's word", /\b(live edition|plain edition|spill zone|not here\b.*edition|is due here|are due here)\b/i],
  ["says fluid for resin", /\bfluid (to|in|on|left|needed|over|level)\b/i],
  ["says the core is at core", /\bcore is at core\b/i],
  ["says optional otherwise", /\bmay be left out\b/i],
];

const british =
  /\b(colour\w*|vapour\w*|centre[ds]?|stabilis\w*|catalys(ed|ing)|sensitis\w*|mould\w*|grey|licence[ds]?|litres?|millilitres?|metres?|millimetres?|behaviour|favour\w*|neighbour\w*|organis(e|ation)\w*|recognis\w*|minimis\w*|maximis\w*|labelled|cancelled|travelled|modelled|programme|judgement|aluminium|tyres?|whilst|learnt|mark-up|home-made)\b/i;

describe("what a person reads", () => {
  // The changelog tells of old words, the engine's own are replaced by ours, and a setting is still found by its old name.
  const said = sentences().filter(
    ({ file, text }) => !/^(CHANGELOG|DEVELOPERS)\.md$|^tool\/(slim|notices)\.ts$|enginewords/.test(file) && text !== "catalysed months",
  );
  const where = (pattern: RegExp) => said.filter(({ text }) => pattern.test(text)).map(({ file, line, text }) => `${file}:${line} ${text}`);

  it("is all of it", () => expect(said.length).toBeGreaterThan(2000));

  it.each(gone)("has nothing that %s", (_, pattern) => expect(where(pattern)).toEqual([]));

  it("is spelled as in the United States", () => expect(where(british)).toEqual([]));
});
