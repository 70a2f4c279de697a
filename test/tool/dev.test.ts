import { type ChildProcess, spawn } from "node:child_process";
import { readFileSync, utimesSync } from "node:fs";
import { join } from "node:path";

const root = join(__dirname, "../..");
let child: ChildProcess;

/** The first words of the child that match. */
const says = (pattern: RegExp): Promise<RegExpExecArray> =>
  new Promise((resolve, reject) => {
    let said = "";
    child.stdout!.on("data", (data) => {
      said += data;
      const found = pattern.exec(said);
      if (found) resolve(found);
    });
    child.on("exit", () => reject(new Error(`it ended: ${said}`)));
  });

afterAll(() => child.kill());

it("serves the page, and tells it to load again when one of its sources is written", async () => {
  child = spawn(process.execPath, ["--import", "tsx", "tool/dev.ts", "--port", "0"], { cwd: root, stdio: ["ignore", "pipe", "inherit"] });
  const [, address] = await says(/at (http:\S+)/);
  const page = await (await fetch(address)).text();
  expect(page).toContain('<script src="reload.js">');
  expect(await (await fetch(`${address}reload.js`)).text()).toContain("location.reload()");
  const changes = (await fetch(`${address}changes`)).body!.getReader();
  const built = says(/built again: (.*)/);
  const style = join(root, "sheet/page/page.css");
  utimesSync(style, new Date(), new Date());
  const told = await changes.read();
  expect(new TextDecoder().decode(told.value)).toBe("data: changed\n\n");
  expect((await built)[1]).toContain("page.css");
  expect(await (await fetch(`${address}page.css`)).text()).toBe(readFileSync(style, "utf8"));
  await changes.cancel();
});
