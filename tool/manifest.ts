import { JSDOM } from "jsdom";

/** The host that manifest.xml names in the repository: a development machine. */
export const development = "https://localhost:3000";

const { DOMParser, XMLSerializer } = new JSDOM().window;

export const parse = (xml: string): Document => new DOMParser().parseFromString(xml, "text/xml");

/** Elements of a name, whatever their namespace; "*" for all. */
export const elements = (root: Document | Element, name: string): Element[] => [...root.getElementsByTagNameNS("*", name)];

/** An address under which a folder of files can be served: https, and no query or fragment that files could not follow. */
export function hostAddress(typed: string): string {
  if (!URL.canParse(typed)) throw new Error(`${typed} is no address: type one such as https://club.example/porewise`);
  const { protocol, search, hash, username, origin, pathname } = new URL(typed);
  if (protocol !== "https:") throw new Error(`${typed}: Excel loads add-ins over https only`);
  if (search || hash || typed.endsWith("?")) throw new Error(`${typed}: leave out what follows the path`);
  if (username) throw new Error(`${typed}: leave out the user name`);
  return origin + pathname.replace(/\/+$/, "");
}

export interface Edition {
  readonly host: string;
  readonly id: string;
  /** As in package.json: three numbers. */
  readonly version: string;
  readonly name?: string;
}

/** The manifest for another host, id, version and name. */
export function hostedManifest(xml: string, { host, id, version, name }: Edition): string {
  const document = parse(xml);
  const base = hostAddress(host);
  for (const element of elements(document, "*")) {
    const address = element.getAttribute("DefaultValue");
    if (address?.startsWith(`${development}/`)) element.setAttribute("DefaultValue", base + address.slice(development.length));
  }
  for (const domain of elements(document, "AppDomain")) domain.textContent = new URL(base).origin;
  elements(document, "Id")[0].textContent = id;
  elements(document, "Version")[0].textContent = `${version}.0`;
  if (name) {
    const named = elements(document, "String").filter((string) => /\.Label$/.test(string.getAttribute("id") ?? ""));
    for (const element of [...elements(document, "DisplayName"), ...named]) element.setAttribute("DefaultValue", name);
  }
  const comment = [...document.childNodes].find((node) => node.nodeType === 8);
  comment?.remove();
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(document)}\n`;
}
