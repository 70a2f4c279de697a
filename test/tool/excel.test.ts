import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import type { IncomingMessage } from "node:http";
import { get, request } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Certificate, madeIn } from "../../tool/certificate";
import { byHand, sideloading } from "../../tool/excel";
import { dist } from "../../tool/fresh";
import { development, elements, parse } from "../../tool/manifest";
import { type Served, serve } from "../../tool/serve";

const folder = mkdtempSync(join(tmpdir(), "excel-"));
let made: Certificate;
let served: Served;

beforeAll(async () => {
  jest.spyOn(console, "log").mockImplementation();
  made = await madeIn(join(folder, "certificate"));
  const { untrusted: _, ...secure } = made;
  served = await serve(dist, { port: 0, guest: "Excel", secure });
});
afterAll(async () => {
  await served.close();
  rmSync(folder, { recursive: true });
});

/** As a browser that trusts the certificate. */
const asked = (path: string, method = "GET"): Promise<IncomingMessage> =>
  new Promise((resolve, reject) => {
    const options = { ca: made.ca, method, headers: { Origin: "https://excel.example", "Access-Control-Request-Private-Network": "true" } };
    request(served.address + path, options, (answer) => resolve(answer.resume()))
      .on("error", reject)
      .end();
  });

const named = elements(parse(readFileSync(join(__dirname, "../../manifest.xml"), "utf8")), "*")
  .flatMap((element) => element.getAttribute("DefaultValue") ?? [])
  .filter((value) => value.startsWith(`${development}/`))
  .map((value) => value.slice(development.length + 1));

it.each([...new Set(named)])("hands out %s, which the manifest names, to Excel on the web", async (path) => {
  const { statusCode, headers } = await asked(path);
  expect(statusCode).toBe(200);
  expect(headers["access-control-allow-origin"]).toBe("*");
  expect(headers["x-frame-options"]).toBeUndefined();
  expect(headers["content-security-policy"] ?? "").not.toContain("frame-ancestors");
});

it("lets a browser reach this machine from a page on the network, which asks first", async () => {
  const { statusCode, headers } = await asked("functions.json", "OPTIONS");
  expect([statusCode, headers["access-control-allow-private-network"]]).toEqual([204, "true"]);
});

it("keeps a certificate that is good, and is not trusted without it", async () => {
  const again = await madeIn(join(folder, "certificate"));
  expect(String(again.cert)).toBe(String(made.cert));
  await expect(new Promise((_, reject) => get(served.address).on("error", reject))).rejects.toThrow(/certificate/);
});

it("says what to do by hand, with the manifest's path", () => {
  expect(byHand("/a/ca.crt")).toMatch(/import\n\s+\/a\/ca\.crt/);
  expect(byHand()).toContain(join(__dirname, "../../manifest.xml"));
});

it("hands the tool that starts Excel nothing that a shell would take apart", () => {
  for (const act of ["start", "stop"] as const) for (const word of sideloading(act)) expect(word).toMatch(/^[\w.@-]+$/);
});
