import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { headersOf } from "../../tool/headers";
import { orderOf, pack } from "../../tool/package";
import { findProgram } from "../../tool/programs";
import { rehosted } from "../built";
import { needing } from "../needing";

const docs = join(__dirname, "../../docs");
const folder = mkdtempSync(join(tmpdir(), "serving-"));
const site = join(folder, "porewise");
const host = "https://club.example/porewise";

beforeAll(() => pack(orderOf(["--host", host, "-o", site]), rehosted));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });

const snippet = (name: string): string => readFileSync(join(docs, name), "utf8").replaceAll("/srv/porewise", site);

/** How each is started on a port of this machine, with the text of the guide for its configuration. */
const servers = {
  nginx: (port: number) => {
    const config = join(folder, "nginx.conf");
    mkdirSync(join(folder, "temp"), { recursive: true });
    const temp = ["client_body", "proxy", "fastcgi", "uwsgi", "scgi"].map((name) => `${name}_temp_path ${folder}/temp/${name};`).join(" ");
    writeFileSync(
      config,
      // Started by root, its workers would be nobody, who may not read this folder.
      `${process.getuid?.() === 0 ? "user root; " : ""}daemon off; pid ${folder}/nginx.pid; error_log stderr; events {} http { access_log off; ${temp} server { listen 127.0.0.1:${port};\n${snippet("nginx.conf")} } }`,
    );
    return spawn(findProgram("nginx")!, ["-e", "stderr", "-p", folder, "-c", config], { stdio: "ignore" });
  },
  caddy: (port: number) => {
    const config = join(folder, "Caddyfile");
    writeFileSync(
      config,
      `{\n\tadmin off\n\tauto_https off\n}\n${snippet("Caddyfile").replace("club.example {", `http://127.0.0.1:${port} {`)}`,
    );
    return spawn(findProgram("caddy")!, ["run", "--config", config, "--adapter", "caddyfile"], { stdio: "ignore" });
  },
};

const types = {
  "functions.js": /javascript/,
  "functions.json": /json/,
  "taskpane.html": /^text\/html/,
  "taskpane.js": /javascript/,
  "taskpane.css": /^text\/css/,
  "manifest.xml": /xml/,
  "icons/mark-32.png": /^image\/png/,
  "workbook/porewise-live-us.xlsx": /./,
  "": /^text\/html/,
};

describe.each(["nginx", "caddy"] as const)("%s, told what the guide says", (program) => {
  needing(program)("", () => {
    let child: ChildProcess;
    let home: string;

    beforeAll(async () => {
      const port = await freePort();
      home = `http://127.0.0.1:${port}/porewise/`;
      child = servers[program](port);
      let ended = false;
      child.on("exit", () => {
        ended = true;
      });
      for (;;) {
        if (ended) throw new Error(`${program} did not start`);
        if (await fetch(home).catch(() => undefined)) return;
        await new Promise(setImmediate);
      }
    });
    afterAll(() => child?.kill());

    it.each(Object.entries(types))("sends %s as Excel needs it", async (path, type) => {
      const { status, headers } = await fetch(home + path);
      expect([path, status, headers.get("access-control-allow-origin")]).toEqual([path, 200, "*"]);
      expect(headers.get("content-type")).toMatch(type);
      const kept = path.startsWith("icons/") ? "public, max-age=86400" : "no-cache";
      expect([headers.get("cache-control"), headers.get("x-content-type-options")]).toEqual([kept, "nosniff"]);
      expect([headers.get("x-frame-options"), headers.get("content-security-policy")]).toEqual([null, null]);
    });

    it("leads on from the address without its last slash", async () => {
      const { status, headers } = await fetch(home.slice(0, -1), { redirect: "manual" });
      expect([Math.floor(status / 100), headers.get("location")]).toEqual([3, expect.stringMatching(/\/porewise\/$/)]);
    });

    it("answers 404 for what is not there", async () => expect((await fetch(`${home}none.js`)).status).toBe(404));
  });
});

it("a package brings the same headers in a file that hosts read", () => {
  expect(readFileSync(join(site, "_headers"), "utf8")).toBe(headersOf(host));
  expect(headersOf(host)).toBe(
    "/porewise/*\n  Access-Control-Allow-Origin: *\n  X-Content-Type-Options: nosniff\n/porewise/icons/*\n  Cache-Control: public, max-age=86400\n",
  );
  expect(headersOf("https://club.example")).toMatch(/^\/\*\n/);
});
