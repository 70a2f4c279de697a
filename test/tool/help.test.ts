import { isFault } from "../../shared/outcome";
import { inWords } from "../../sheet/answertext";
import { evaluator } from "../../sheet/engine";
import { catalogue, cellName } from "../../src/catalogue";
import { cautions } from "../../src/cautions";
import { isMeant, tasks } from "../../src/help/tasks";
import { helpFile, helpPages } from "../../tool/help";
import { answered, exampleOf } from "../../tool/help/example";
import { near } from "../within";

const pages = helpPages();
const text = (name: string) => pages.get(name)!;
const guides = ["hosting.html", "support.html", "privacy.html", "appsource.html"];

describe("help", () => {
  it("has a page for each function and each job, none twice, and a list of all", () => {
    expect(pages.size).toBe(catalogue.length + tasks.length + guides.length + 1);
    const list = text("index.html");
    for (const name of pages.keys()) if (name !== "index.html") expect(list).toContain(`href="${name}"`);
  });

  it("leads nowhere that is not there", () => {
    const known = new Set([...pages.keys(), "first-excel.html", "../taskpane.css", "help.css", "nginx.conf", "Caddyfile"]);
    const lost = [...pages].flatMap(([name, html]) =>
      [...html.matchAll(/href="([^"]*)"/g)].filter(([, to]) => !known.has(to)).map(([, to]) => `${name}: ${to}`),
    );
    expect(lost).toEqual([]);
  });

  it("brings the guides that a host needs, their tables and links as those of a page", () => {
    expect(text("hosting.html")).toMatch(/<h1>On a host of your own<\/h1>[\s\S]*<td>Excel on the web<\/td>/);
    expect(text("support.html")).toContain('<a href="first-excel.html">ten steps</a>');
    for (const name of guides) expect(text(name)).not.toMatch(/href="[^"]*\.md"|\]\(/);
  });

  it("shows nothing that only works beside a sheet", () => {
    for (const html of pages.values()) expect(html).not.toMatch(/Insert formula|Use selected cells|selected cell/);
  });
});

describe.each(catalogue.map((contract) => ({ name: cellName(contract), contract })))("the page of $name", ({ contract }) => {
  const html = text(helpFile(contract).replace("help/", ""));

  it("says its question, source, equation and cautions", () => {
    const plain = html
      .replace(/&quot;/g, '"')
      .replace(/&lt;/g, "<")
      .replace(/&gt;/g, ">")
      .replace(/&amp;/g, "&");
    expect(plain).toContain(`<h1>${contract.asks}</h1>`);
    expect(plain).toContain(contract.source);
    for (const key of contract.cautions) expect(plain).toContain(cautions[key as keyof typeof cautions]);
    for (const name of Object.keys(contract.args)) expect(plain).toContain(`<code>${name}</code>`);
  });

  it("answers its example as the contract does", () => {
    const { answer, missing, troubles } = answered(contract);
    expect({ missing, troubles }).toEqual({ missing: [], troubles: {} });
    const { gives } = contract.worked;
    const wanted = (Array.isArray(gives) ? gives : [gives]).flat();
    const got = answer!.flat();
    expect(got).toHaveLength(wanted.length);
    got.forEach((own, i) => {
      expect(isFault(own)).toBe(false);
      if (typeof wanted[i] === "number") near(own, wanted[i], 1e-6);
      else expect(own).toEqual(wanted[i]);
    });
    expect(exampleOf(contract).name).toBe(contract.name);
  });
});

describe.each(tasks)("the job “$title”", ({ title, steps, functions, cautions: keys }) => {
  const answer = evaluator();

  it("has formulas that answer what it says", () => {
    for (const { formula, gives } of steps)
      if (formula) expect(inWords(formula, answer(formula)).replace(/ +/g, " ").split("\n")).toContain(gives);
  });

  it("names functions and cautions that exist, and is found by its title", () => {
    const names = catalogue.map(({ name }) => name as string);
    expect(functions.filter((name) => !names.includes(name))).toEqual([]);
    expect(keys.filter((key) => !(key in cautions))).toEqual([]);
    expect(tasks.filter((task) => isMeant(task, title)).map((task) => task.title)).toContain(title);
  });
});
