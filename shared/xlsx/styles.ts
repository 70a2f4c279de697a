import { retagged } from "./retag";
import type { StyleChange } from "./stylechange";
import { StyleLists } from "./stylesheet";
import { childrenOf, escaped, nameOf, openingOf, prefixed } from "./xml";

/** Built-in number formats, which files give by number only. */
const known: Readonly<Record<string, number>> = {
  ...{ General: 0, "0": 1, "0.00": 2, "#,##0": 3, "#,##0.00": 4, "0%": 9, "0.00%": 10, "0.00E+00": 11, "# ?/?": 12, "# ??/??": 13 },
  ...{ "mm-dd-yy": 14, "d-mmm-yy": 15, "d-mmm": 16, "mmm-yy": 17, "h:mm AM/PM": 18, "h:mm:ss AM/PM": 19, "h:mm": 20, "h:mm:ss": 21 },
  ...{ "m/d/yy h:mm": 22, "mm:ss": 45, "[h]:mm:ss": 46, "@": 49 },
};

const argb = (color: string): string => `FF${color.replace(/^#/, "").slice(0, 6).toUpperCase()}`;

const fontOrder = [
  "b",
  "i",
  "strike",
  "condense",
  "extend",
  "outline",
  "shadow",
  "u",
  "vertAlign",
  "sz",
  "color",
  "name",
  "family",
  "charset",
  "scheme",
];
const edgeOrder = ["start", "left", "end", "right", "top", "bottom", "diagonal", "vertical", "horizontal"];

/** The styles of a workbook, to derive others from. */
export class StylePool extends StyleLists {
  private readonly made = new Map<string, number>();
  private readonly formats: Map<string, number>;

  constructor(xml: string) {
    super(xml);
    this.formats = new Map(this.items("numFmts").map(({ attributes }) => [attributes.formatCode ?? "", Number(attributes.numFmtId)]));
  }

  private font(id: number, { bold, italic, strike, underline, size, color }: StyleChange): number {
    const { prefix } = this;
    const set: Record<string, string> = {};
    const flag = (name: string, on: boolean | undefined) => {
      if (on !== undefined) set[name] = on ? `<${prefix}${name}/>` : "";
    };
    flag("b", bold);
    flag("i", italic);
    flag("strike", strike);
    flag("u", underline);
    if (size !== undefined) set.sz = size === null ? `<${prefix}sz val="11"/>` : `<${prefix}sz val="${size}"/>`;
    if (color !== undefined) set.color = color === null ? "" : `<${prefix}color rgb="${argb(color)}"/>`;
    if (!Object.keys(set).length) return id;
    return this.add("fonts", this.composed("font", "", this.items("fonts")[id], fontOrder, set));
  }

  private fill(id: number, { fill }: StyleChange): number {
    if (fill === undefined) return id;
    const { prefix } = this;
    if (fill === null) return 0;
    const pattern = `<${prefix}patternFill patternType="solid"><${prefix}fgColor rgb="${argb(fill)}"/><${prefix}bgColor indexed="64"/></${prefix}patternFill>`;
    return this.add("fills", `<${prefix}fill>${pattern}</${prefix}fill>`);
  }

  private border(id: number, { edges }: StyleChange): number {
    if (!edges) return id;
    const { prefix } = this;
    const own = this.items("borders")[id];
    const attributes = own ? this.xml.slice(own.start, openingOf(this.xml, own).end).replace(/^<[^\s>/]+|\s*\/?>$/g, "") : "";
    const set = Object.fromEntries(
      Object.entries(edges).map(([side, edge]) => [
        side,
        edge
          ? `<${prefix}${side} style="${edge.style}"><${prefix}color ${edge.color ? `rgb="${argb(edge.color)}"` : 'auto="1"'}/></${prefix}${side}>`
          : `<${prefix}${side}/>`,
      ]),
    );
    return this.add("borders", this.composed("border", attributes, own, edgeOrder, set));
  }

  private format(id: number, { format }: StyleChange): number {
    if (format === undefined) return id;
    if (format === null) return 0;
    const there = known[format] ?? this.formats.get(format);
    if (there !== undefined) return there;
    const number = Math.max(163, ...this.formats.values()) + 1;
    this.formats.set(format, number);
    this.add("numFmts", `<${this.prefix}numFmt numFmtId="${number}" formatCode="${escaped(format)}"/>`);
    return number;
  }

  /** Index of a differential format (dxf), given as XML without a prefix. */
  ofRule(text: string): number {
    return this.add("dxfs", prefixed(text, this.prefix));
  }

  /** Style index (cellXfs) of a style derived from another one by some changes. */
  like(base: number, change: StyleChange): number {
    const key = `${base} ${JSON.stringify(change)}`;
    const known = this.made.get(key);
    if (known !== undefined) return known;
    const own = this.items("cellXfs")[base];
    const says = own?.attributes ?? {};
    const id = (name: string) => Number(says[name] ?? 0);
    const ids = {
      numFmtId: this.format(id("numFmtId"), change),
      fontId: this.font(id("fontId"), change),
      fillId: this.fill(id("fillId"), change),
      borderId: this.border(id("borderId"), change),
    };
    const applies: Record<string, string> = {};
    for (const [name, flag] of Object.entries({
      numFmtId: "applyNumberFormat",
      fontId: "applyFont",
      fillId: "applyFill",
      borderId: "applyBorder",
    }))
      if (ids[name as keyof typeof ids] !== id(name)) applies[flag] = "1";
    const { horizontal, vertical, wrap, rotation } = change;
    const aligns = { horizontal, vertical, wrapText: wrap === undefined ? undefined : wrap ? "1" : null, textRotation: rotation };
    const set = Object.entries(aligns).filter(([, value]) => value !== undefined);
    const { prefix } = this;
    let inner = own ? childrenOf(own).map((child) => [nameOf(child), this.text(child)] as const) : [];
    if (set.length) {
      applies.applyAlignment = "1";
      const tag = inner.find(([name]) => name === "alignment")?.[1] ?? `<${prefix}alignment/>`;
      const text = retagged(
        tag,
        { start: 0, open: tag.indexOf(">") + 1 },
        Object.fromEntries(set.map(([name, value]) => [name, value ?? undefined])),
      ).text;
      inner = [["alignment", text], ...inner.filter(([name]) => name !== "alignment")];
    }
    const attributes = { xfId: "0", ...says, ...ids, ...applies };
    const tag = `<${prefix}xf${Object.entries(attributes)
      .map(([name, value]) => ` ${name}="${escaped(String(value))}"`)
      .join("")}`;
    const number = this.add("cellXfs", inner.length ? `${tag}>${inner.map(([, text]) => text).join("")}</${prefix}xf>` : `${tag}/>`);
    this.made.set(key, number);
    return number;
  }
}
