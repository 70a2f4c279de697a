import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Served, serve } from "../../tool/serve";

const folder = mkdtempSync(join(tmpdir(), "serve-"));
mkdirSync(join(folder, "public"));
writeFileSync(join(folder, "secret.txt"), "outside");
writeFileSync(join(folder, "public/index.html"), "<!doctype html>½");
writeFileSync(join(folder, "public/functions.json"), "{}");
writeFileSync(join(folder, "public/functions.js"), "1");
writeFileSync(join(folder, "public/mark.svg"), "<svg/>");

const served: Served[] = [];
const open = async (port: number) => {
  const one = await serve(join(folder, "public"), { port });
  served.push(one);
  return one;
};

let page: Served;
beforeAll(async () => {
  page = await open(0);
});
afterAll(async () => {
  await Promise.all(served.map((one) => one.close()));
  rmSync(folder, { recursive: true });
});

/** A path as typed, which a browser would tidy before it asks. */
const rawStatus = (path: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket = connect(page.port, "127.0.0.1", () => socket.write(`GET ${path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n`));
    let answer = "";
    socket.on("data", (data) => {
      answer += data;
    });
    socket.on("end", () => resolve(answer));
    socket.on("error", reject);
  });

it.each([
  ["", "text/html;charset=utf-8"],
  ["functions.js", "text/javascript;charset=utf-8"],
  ["functions.json", "application/json;charset=utf-8"],
  ["mark.svg", "image/svg+xml;charset=utf-8"],
])("hands out /%s as %s, never from a cache", async (path, type) => {
  const { status, headers } = await fetch(page.address + path);
  expect([status, headers.get("content-type"), headers.get("cache-control")]).toEqual([200, type, "no-store"]);
});

it("reads a file as it is now", async () => {
  writeFileSync(join(folder, "public/new.txt"), "one");
  expect(await (await fetch(`${page.address}new.txt`)).text()).toBe("one");
  writeFileSync(join(folder, "public/new.txt"), "two");
  expect(await (await fetch(`${page.address}new.txt`)).text()).toBe("two");
});

it("has nothing but its folder", async () => {
  expect((await fetch(`${page.address}none.html`)).status).toBe(404);
  for (const path of ["/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt"]) expect(await rawStatus(path)).toMatch(/^HTTP\/1.1 404/);
});

it("moves on from a port that is taken", async () => {
  const next = await open(page.port);
  expect(next.port).toBeGreaterThan(page.port);
  expect((await fetch(next.address)).status).toBe(200);
});
