import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
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
writeFileSync(join(folder, "public/a b.txt"), "in");
mkdirSync(join(folder, "public/deep"));
writeFileSync(join(folder, "public/deep/index.html"), "deep");
symlinkSync(join(folder, "secret.txt"), join(folder, "public/leak.txt"));
symlinkSync(folder, join(folder, "public/out"));

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

/** What the server answers to a request written out by hand, which a browser would tidy before it asks. */
const raw = (request: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket = connect(page.port, "127.0.0.1", () => socket.write(request));
    let answer = "";
    socket.on("data", (data) => {
      answer += data;
    });
    socket.on("end", () => resolve(answer));
    socket.on("error", reject);
  });

const rawStatus = (path: string, host = "localhost", method = "GET", more = ""): Promise<string> =>
  raw(`${method} ${path} HTTP/1.1\r\nHost: ${host}\r\n${more}Connection: close\r\n\r\n`);

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
  const out = ["/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt", "//secret.txt", "/leak.txt", "/out/secret.txt", "/%00", "/%zz"];
  for (const path of out) expect([path, await rawStatus(path)]).toEqual([path, expect.stringMatching(/^HTTP\/1.1 404/)]);
});

it("opens a folder on its index, and a name with a blank in it", async () => {
  expect(await (await fetch(`${page.address}deep/?a=1`)).text()).toBe("deep");
  expect(await (await fetch(`${page.address}a%20b.txt`)).text()).toBe("in");
});

it("answers names of this machine only", async () => {
  for (const host of ["localhost", "127.0.0.1:1", "[::1]:80"]) expect(await rawStatus("/", host)).toMatch(/^HTTP\/1.1 200/);
  for (const host of ["", "evil.example", "localhost.evil.example"]) expect(await rawStatus("/", host)).toMatch(/^HTTP\/1.1 421/);
});

it("gives, and takes nothing", async () => {
  const head = await fetch(page.address, { method: "HEAD" });
  expect([head.status, head.headers.get("content-length"), await head.text()]).toEqual([200, "17", ""]);
  for (const method of ["POST", "PUT", "DELETE", "OPTIONS"]) expect((await fetch(page.address, { method })).status).toBe(405);
});

it("is framed by its own pages only", async () => {
  expect((await fetch(page.address)).headers.get("content-security-policy")).toBe("frame-ancestors 'self'");
});

it("outlives requests for parts, and requests that are none", async () => {
  for (const range of ["bytes=5-2", "bytes=0-0", "bytes=-", "bytes=99-", "x"])
    expect(await rawStatus("/", "localhost", "GET", `Range: ${range}\r\n`)).toMatch(/^HTTP\/1.1 200.*½$/s);
  for (const request of ["\r\n\r\n\0", "GET / HTTP/1.1\r\n\r\n", "GET http://[ HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"])
    expect(await raw(request)).toMatch(/^HTTP\/1.1 40/);
  expect((await fetch(page.address)).status).toBe(200);
});

it("moves on from a port that is taken", async () => {
  const next = await open(page.port);
  expect(next.port).toBeGreaterThan(page.port);
  expect((await fetch(next.address)).status).toBe(200);
});
