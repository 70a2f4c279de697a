import { spawn } from "node:child_process";
import { join } from "node:path";

const root = join(__dirname, "../..");

/** Starts `npm start`'s program and waits until it has said what it says. */
function started(args: readonly string[]) {
  const child = spawn(process.execPath, ["--import", "tsx", "tool/start.ts", ...args], { cwd: root, stdio: ["ignore", "pipe", "pipe"] });
  let said = "";
  const ended = new Promise<number | null>((resolve) => child.on("exit", (code) => resolve(code)));
  const lines = new Promise<string[]>((resolve) => {
    const hear = (data: Buffer) => {
      said += data;
      if (said.split("\n").length > 2) resolve(said.trim().split("\n"));
    };
    child.stdout.on("data", hear);
    child.stderr.on("data", hear);
    child.on("exit", () => resolve(said.trim().split("\n")));
  });
  return { child, lines, ended };
}

it("builds, serves, says where and what to try, and stops when asked", async () => {
  const { child, lines, ended } = started(["--port", "0"]);
  const said = await lines;
  expect(said).toHaveLength(2);
  const [address] = /http:\/\/127\.0\.0\.1:\d+\//.exec(said[0]) ?? [];
  expect(said[1]).toMatch(/^Try: /);
  const page = await (await fetch(address!)).text();
  expect(page).toContain("Content-Security-Policy");
  child.kill("SIGINT");
  expect(await ended).toBe(0);
});

it("refuses a port that is none, in words", async () => {
  const { lines, ended } = started(["--port", "3000abc"]);
  expect(await lines).toEqual(["--port takes a number from 0 to 65535: “3000abc” is none."]);
  expect(await ended).toBe(1);
});
