declare global {
  /** Set where the whole page is one file: what a host would hand out lies inside it. */
  var porewiseInside: ((path: string) => Uint8Array<ArrayBuffer> | undefined) | undefined;
  /** The address of the reader of files there. */
  var porewiseReader: (() => string) | undefined;
}

/** A file of the page: from inside it, or else from its host. */
export function fetched(path: string): Promise<Response> {
  const bytes = globalThis.porewiseInside?.(path);
  return bytes ? Promise.resolve(new Response(bytes)) : fetch(path);
}
