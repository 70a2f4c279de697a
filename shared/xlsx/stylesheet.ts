import type { XmlElement } from "@rgrove/parse-xml";
import { elementRetagged } from "./retag";
import { type Change, changed, childOf, childrenOf, nameOf, openingOf, read } from "./xml";

/** Order of the lists in the styles part, by the schema. */
const lists = ["numFmts", "fonts", "fills", "borders", "cellStyleXfs", "cellXfs", "cellStyles", "dxfs", "tableStyles", "colors", "extLst"];

/** The styles part of a workbook: new styles are appended to its lists, and existing ones keep their indexes. */
export class StyleLists {
  private readonly root: XmlElement;
  protected readonly prefix: string;
  private readonly added: Record<string, string[]> = { numFmts: [], fonts: [], fills: [], borders: [], cellXfs: [], dxfs: [] };

  constructor(protected readonly xml: string) {
    this.root = read(xml);
    this.prefix = this.root.name.slice(0, -"styleSheet".length);
  }

  protected items(list: string): XmlElement[] {
    const element = childOf(this.root, list);
    return element ? childrenOf(element) : [];
  }

  protected add(list: string, text: string): number {
    const before = this.items(list).length;
    const own = this.added[list];
    const there = own.indexOf(text);
    return before + (there >= 0 ? there : own.push(text) - 1);
  }

  protected text(element: XmlElement): string {
    return this.xml.slice(element.start, element.end);
  }

  /** The children of an element as text by name, in an order, some of them replaced. */
  protected composed(
    tag: string,
    attributes: string,
    element: XmlElement | undefined,
    order: readonly string[],
    set: Readonly<Record<string, string>>,
  ): string {
    const own = new Map((element ? childrenOf(element) : []).map((child) => [nameOf(child), this.text(child)]));
    for (const [name, text] of Object.entries(set)) own.set(name, text);
    const names = [...own.keys()].sort((a, b) => order.indexOf(a) - order.indexOf(b));
    return `<${this.prefix}${tag}${attributes}>${names.map((name) => own.get(name)).join("")}</${this.prefix}${tag}>`;
  }

  /** The part with everything that was added. */
  written(): string {
    const changes: Change[] = [];
    for (const [list, texts] of Object.entries(this.added)) {
      if (!texts.length) continue;
      const element = childOf(this.root, list);
      const { prefix } = this;
      if (!element) {
        const children = childrenOf(this.root);
        const after = children.find((child) => lists.indexOf(nameOf(child)) > lists.indexOf(list));
        const first = after?.start ?? children.at(-1)!.end;
        changes.push({ start: first, end: first, text: `<${prefix}${list} count="${texts.length}">${texts.join("")}</${prefix}${list}>` });
        continue;
      }
      const opening = openingOf(this.xml, element);
      const count = childrenOf(element).length + texts.length;
      const tag = elementRetagged(this.xml, element, { count });
      if (opening.closed) {
        changes.push({ ...tag, text: `${tag.text.replace(/\s*\/>$/, ">")}${texts.join("")}</${element.name}>` });
        continue;
      }
      const end = element.end - `</${element.name}>`.length;
      changes.push(tag, { start: end, end, text: texts.join("") });
    }
    return changed(this.xml, changes);
  }

  get isChanged(): boolean {
    return Object.values(this.added).some((texts) => texts.length > 0);
  }
}
