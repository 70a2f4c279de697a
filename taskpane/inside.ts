declare global {
  /** Set where the whole page is one file: the files that a server would have are inside it. */
  var porewiseInside: ((path: string) => Uint8Array<ArrayBuffer> | undefined) | undefined;
  /** Address of the worker that reads files. */
  var porewiseReader: (() => string) | undefined;
}

/** A file of the site: from inside the page, or else fetched. */
export function fetched(path: string): Promise<Response> {
  const bytes = globalThis.porewiseInside?.(path);
  return bytes ? Promise.resolve(new Response(bytes)) : fetch(path);
}
