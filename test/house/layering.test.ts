import { filesUnder, importsOf, outsideNames, textOf } from "./sources";

const subjects = ["wood", "chamber", "vacuum", "resin", "cure", "cost", "plan"];
const folders = ["shared", "src", "taskpane", "sheet", "tool"];
const files = folders.flatMap((folder) => filesUnder(folder)).filter((path) => !path.endsWith(".d.ts"));
const imports = new Map(files.map((path) => [path, importsOf(path)]));

/** `src/wood/moisture.ts` is of `src/wood`, `src/shop.ts` of `src`. */
const folderOf = (path: string): string =>
  path.startsWith("src/") ? path.split("/").slice(0, -1).slice(0, 2).join("/") : path.split("/")[0];
const isOurs = (path: string): boolean => folders.includes(path.split("/")[0]) && path.includes("/");
const isSubject = (path: string): boolean => subjects.some((subject) => path.startsWith(`src/${subject}/`));
const isPure = (path: string): boolean => path.startsWith("shared/") || isSubject(path);

/** Folders from which each may import, beside itself; the innermost that is named here counts. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  shared: [],
  src: ["shared", "src"],
  taskpane: ["shared", "src"],
  sheet: ["shared", "src", "taskpane"],
  tool: ["shared", "src", "taskpane", "sheet"],
};

/** Every import that a rule forbids. */
const broken = (rule: (from: string, to: string) => boolean): string[] =>
  [...imports].flatMap(([from, list]) => list.filter((to) => rule(from, to)).map((to) => `${from} imports ${to}`));

describe("imports", () => {
  it("are found, so that the rules below hold something", () => {
    expect(imports.get("src/wood/moisture.ts")).toContain("shared/contract.ts");
    expect(imports.get("shared/argument.ts")).toContain("zod/mini");
  });

  it("go one way: shared, src, taskpane, sheet, tool", () => {
    const outward = (from: string, to: string) => {
      const [own, other] = [from.split("/")[0], to.split("/")[0]];
      return (isOurs(to) || to.startsWith("test/")) && own !== other && !allowed[own].includes(other);
    };
    expect(broken(outward)).toEqual([]);
  });

  it("of a subject never reach the hosts, the workbook, the help or the checklist", () => {
    const beyond = ["src/excel", "src/workbook", "src/help", "src/checklist"];
    expect(broken((from, to) => isSubject(from) && beyond.includes(folderOf(to)))).toEqual([]);
  });

  it("of src/excel are taskpane/app/excel.ts's alone in the pane", () => {
    const others = (from: string) => from.startsWith("taskpane/") && from !== "taskpane/app/excel.ts";
    expect(broken((from, to) => others(from) && to.startsWith("src/excel/"))).toEqual([]);
  });

  it("of a folder and of another do not lean on each other, but for a folder and what it holds", () => {
    const folder = (path: string) => path.split("/").slice(0, -1).join("/");
    const leans = new Set([...imports].flatMap(([from, list]) => list.filter(isOurs).map((to) => `${folder(from)} ${folder(to)}`)));
    const within = (a: string, b: string) => a.startsWith(`${b}/`) || b.startsWith(`${a}/`);
    const mutual = [...leans].filter((pair) => {
      const [a, b] = pair.split(" ");
      return a < b && !within(a, b) && leans.has(`${b} ${a}`);
    });
    expect(mutual).toEqual([]);
    // What these hold leans on them alone: nothing of theirs reaches down.
    const leaves = {
      "sheet/page": ["kept"],
      "sheet/file": ["beside", "contents", "formulas", "insert", "kept"],
      taskpane: ["app", "views", "run", "help"],
      "src/workbook": ["sheets"],
    };
    const down = Object.entries(leaves).flatMap(([outer, inner]) =>
      inner.flatMap((name) =>
        leans.has(`${outer} ${outer}/${name}`) && leans.has(`${outer}/${name} ${outer}`) ? [`${outer}/${name}`] : [],
      ),
    );
    expect(down).toEqual([]);
  });

  it("form no circle", () => {
    const done = new Set<string>();
    const circles: string[] = [];
    const walk = (path: string, trail: readonly string[]): void => {
      if (trail.includes(path)) circles.push([...trail.slice(trail.indexOf(path)), path].join(" → "));
      if (done.has(path) || trail.includes(path)) return;
      for (const next of imports.get(path) ?? []) walk(next, [...trail, path]);
      done.add(path);
    };
    for (const path of imports.keys()) walk(path, []);
    expect(circles).toEqual([]);
  });
});

describe("packages", () => {
  const at = (name: RegExp, place: RegExp) => expect(broken((from, to) => name.test(to) && !place.test(from))).toEqual([]);

  it("are dependencies where they run, and the others serve those who build and judge", () => {
    const { dependencies } = JSON.parse(textOf("package.json")) as { dependencies: Readonly<Record<string, string>> };
    const nameOf = (path: string) => /^(?:@[^/]+\/)?[^/]+/.exec(path)![0];
    const outside = files.filter((path) => !path.startsWith("tool/")).flatMap((path) => imports.get(path)!.filter((to) => !isOurs(to)));
    const run = [...new Set(outside.filter((to) => to !== "package.json" && !to.startsWith("node:")).map(nameOf))];
    expect(run.filter((name) => !dependencies[name])).toEqual([]);
    // These are shipped as files beside the page.
    const served = ["bootstrap", "chart.js", "font-awesome"];
    expect(Object.keys(dependencies).filter((name) => !run.includes(name) && !served.includes(name))).toEqual([]);
  });

  it("o-spreadsheet stands in sheet alone", () => at(/^@odoo\//, /^sheet\//));
  it("hucre stands in src/workbook/xlsx.ts alone", () => at(/^hucre/, /^src\/workbook\/xlsx\.ts$/));
  it("the decimal library stands in shared/money.ts alone", () => at(/^decimal\.js/, /^shared\/money\.ts$/));
  it("zod comes as zod/mini, a fifth of its size", () => at(/^zod($|\/(?!mini$))/, /^$/));
  it("Node's own are for sheet and tool", () => at(/^node:/, /^(sheet|tool)\//));
});

describe("names from outside", () => {
  const found = (paths: readonly string[], name: RegExp) =>
    paths.flatMap((path) =>
      outsideNames(path)
        .filter((outside) => name.test(outside))
        .map((outside) => `${path} reads ${outside}`),
    );

  it("are found, so that the rules below hold something", () => {
    expect(outsideNames("src/excel/functions.ts")).toContain("CustomFunctions.associate");
    expect(outsideNames("shared/serial.ts")).toContain("Date.UTC");
  });

  it("Office stands in src/excel alone, and in the one file of the pane that looks for it", () => {
    const office = /^(new )?(Office|Excel|OfficeExtension|CustomFunctions)\b/;
    expect(
      found(
        files.filter((path) => !path.startsWith("src/excel/") && !path.startsWith("tool/") && path !== "taskpane/app/excel.ts"),
        office,
      ),
    ).toEqual([]);
  });

  it("nothing in shared or a subject reads a clock, chance, the page or a global", () => {
    const impure =
      /^(Date\.now|Date\(\)?|new Date\(\)|Math\.random|(document|window|globalThis|self|navigator|location|localStorage|sessionStorage|indexedDB|process|performance|crypto|console|fetch|setTimeout|setInterval|queueMicrotask|require)\b)/;
    expect(found(files.filter(isPure), impure)).toEqual([]);
  });

  it("o-spreadsheet's globals stand in sheet alone", () => {
    expect(
      found(
        files.filter((path) => !path.startsWith("sheet/")),
        /^(owl|o_spreadsheet)\b/,
      ),
    ).toEqual([]);
  });
});

describe("one function, one file", () => {
  const defined = filesUnder("src").flatMap((path) =>
    [...textOf(path).matchAll(/\bdefine\(\{\s*name: "([A-Z0-9]+)"/g)].map(([, name]) => ({ path, name })),
  );

  it("finds the functions", () => expect(defined.map(({ name }) => name)).toContain("MOISTURE"));

  it.each(defined)("$name stands in $path, which is named after it", ({ path, name }) => {
    expect(path.split("/").at(-1)).toBe(`${name.toLowerCase()}.ts`);
    expect(defined.filter((other) => other.path === path)).toHaveLength(1);
  });
});
