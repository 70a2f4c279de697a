/** The service worker: the page's files of one version, all of them or none, so that it starts without a network. */

/** The globals of a service worker, which differ from those of a page. */
interface Scope {
  readonly caches: CacheStorage;
  readonly clients: { claim(): Promise<void> };
  readonly location: Location;
  skipWaiting(): Promise<void>;
  addEventListener(type: "install" | "activate", listener: (event: { waitUntil(task: Promise<unknown>): void }) => void): void;
  addEventListener(type: "message", listener: (event: { readonly data: unknown }) => void): void;
  addEventListener(
    type: "fetch",
    listener: (event: { readonly request: Request; respondWith(answer: Promise<Response>): void }) => void,
  ): void;
}

/** Put in when the site is built: the version, made of all files, and the files. */
declare const version: string;
declare const files: readonly string[];

const scope = globalThis as unknown as Scope;
const prefix = "porewise ";
const ours = prefix + version;
const home = new URL("./", scope.location.href).href;

const bring = async (): Promise<void> => {
  const cache = await scope.caches.open(ours);
  await cache.addAll(files.map((file) => new Request(new URL(file, home), { cache: "no-cache" })));
};

const tidy = async (): Promise<void> => {
  const names = await scope.caches.keys();
  await Promise.all(names.filter((one) => one.startsWith(prefix) && one !== ours).map((one) => scope.caches.delete(one)));
  await scope.clients.claim();
};

/** Cache first: files of this version from the cache, anything else from the network. */
const answer = async (request: Request): Promise<Response> => {
  const { origin, pathname } = new URL(request.url);
  const cache = await scope.caches.open(ours);
  return (await cache.match(origin + pathname)) ?? fetch(request);
};

scope.addEventListener("install", (event) => event.waitUntil(bring()));
scope.addEventListener("activate", (event) => event.waitUntil(tidy()));
scope.addEventListener("message", ({ data }) => {
  if (data === "take over") void scope.skipWaiting();
});
scope.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(home)) event.respondWith(answer(request));
});

export {};
