import { namespace } from "../src/catalogue";
import { elements, parse } from "./manifest";

/** Width and height that a PNG file states, or nothing where it is no PNG. */
function pngSize(file: Uint8Array): [width: number, height: number] | undefined {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  return file.length > 24 && view.getUint32(0) === 0x89504e47 ? [view.getUint32(16), view.getUint32(20)] : undefined;
}

/** Which list of resources a reference looks into. */
function listOf(element: Element): string {
  if (element.localName === "Image") return "Image";
  return /^(Runtime|SourceLocation|FunctionFile|LearnMoreUrl)$/.test(element.localName) ? "Url" : "String";
}

function referenceTroubles(document: Document): string[] {
  const resources = elements(document, "Resources")[0];
  const lists = new Map(["Image", "Url", "String"].map((list) => [list, elements(resources, list).map((e) => e.getAttribute("id") ?? "")]));
  const ids = [...lists.values()].flat();
  const references = elements(document, "*").flatMap((element) => {
    const id = element.getAttribute("resid");
    return id === null ? [] : [{ id, list: listOf(element), at: element.localName }];
  });
  return [
    ...references.flatMap(({ id, list, at }) => (lists.get(list)?.includes(id) ? [] : [`${at} names ${id}, which is no ${list} resource`])),
    ...ids.flatMap((id) => (references.some((reference) => reference.id === id) ? [] : [`the resource ${id} is used nowhere`])),
    ...ids.flatMap((id, i) => (ids.indexOf(id) < i ? [`the resource ${id} stands twice`] : [])),
    ...ids.flatMap((id) => (id.length > 32 ? [`${id} has more than 32 characters`] : [])),
  ];
}

/** One page runs everything: pane, functions and ribbon share a runtime only if they name the same address. */
function runtimeTroubles(document: Document): string[] {
  const pane = elements(document, "Runtime")[0]?.getAttribute("resid");
  const page = elements(elements(document, "Page")[0], "SourceLocation")[0];
  const shown = elements(elements(document, "Action")[0], "SourceLocation")[0];
  return [page, elements(document, "FunctionFile")[0], shown].flatMap((element) =>
    element?.getAttribute("resid") === pane ? [] : [`${element?.parentElement?.localName} does not share the runtime ${pane}`],
  );
}

type Read = (path: string) => Uint8Array | undefined;

function addressTroubles(document: Document, host: string, read: Read): string[] {
  const addresses = elements(document, "*").flatMap((element) => {
    const value = element.getAttribute("DefaultValue");
    return value && /Url$|^SourceLocation$|^Image$/.test(element.localName) ? [{ element, value }] : [];
  });
  return addresses.flatMap(({ element, value }) => {
    if (!value.startsWith(`${host}/`)) return [`${value} is not under ${host}`];
    if (/[?#\s]/.test(value)) return [`${value}: an address of a file ends with its name`];
    const file = read(value.slice(host.length + 1));
    return file ? sizeTroubles(element, value, file) : [`${value}: there is no such file`];
  });
}

/** An icon is as large as the places that name it say. */
function sizeTroubles(element: Element, value: string, file: Uint8Array): string[] {
  const id = element.localName === "Image" ? element.getAttribute("id") : undefined;
  const entry: Record<string, number> = { IconUrl: 32, HighResolutionIconUrl: 64 };
  const users = id ? elements(element.ownerDocument, "Image").filter((image) => image.getAttribute("resid") === id) : [];
  const due = new Set([...users.map((image) => Number(image.getAttribute("size"))), entry[element.localName]].filter(Boolean));
  const size = pngSize(file);
  return [...due].flatMap((side) => (size?.[0] === side && size[1] === side ? [] : [`${value} is no PNG of ${side} by ${side}`]));
}

function wordTroubles(document: Document): string[] {
  const lengths: Record<string, number> = { DisplayName: 125, Description: 250 };
  const long = Object.entries(lengths).flatMap(([name, most]) =>
    (elements(document, name)[0]?.getAttribute("DefaultValue") ?? "").length > most ? [`${name} has more than ${most} characters`] : [],
  );
  const strings = elements(document, "String").map((string) => [string.getAttribute("id"), string.getAttribute("DefaultValue")]);
  const named = elements(document, "Namespace")[0]?.getAttribute("resid");
  const own = strings.find(([id]) => id === named)?.[1];
  return [...long, ...(own === namespace ? [] : [`the functions' namespace is ${own} where ${namespace} is due`])];
}

/** What the published schemas do not see: references, addresses, files, sizes and words. `read` gives a served file. */
export function manifestTroubles(xml: string, host: string, read: Read): string[] {
  const document = parse(xml);
  return [
    ...referenceTroubles(document),
    ...runtimeTroubles(document),
    ...addressTroubles(document, host, read),
    ...wordTroubles(document),
  ];
}
