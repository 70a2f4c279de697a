import { type SaxesAttributeNSIncomplete, SaxesParser, type SaxesTagNS } from "saxes";
import { Unreadable } from "./unzip";

/** A tag as it is met: its name, and where its start tag stands in the text. */
export interface Tag {
  /** The name as written, prefix included, and without it. */
  readonly name: string;
  readonly local: string;
  readonly prefix: string;
  /** The namespace that the prefix stands for. */
  readonly uri: string;
  readonly start: number;
  /** The end of the start tag; the whole element where it is closed. */
  readonly open: number;
  readonly closed: boolean;
  attribute(name: string): string | undefined;
}

export interface Heard {
  readonly open?: (tag: Tag) => void;
  /** `end` is the end of the whole element. */
  readonly close?: (tag: Tag, end: number) => void;
  readonly text?: (text: string) => void;
}

export const damagedPart = () => new Unreadable("one of its parts is damaged: save it again in your spreadsheet program");

/** One object a tag, its attributes where the parser left them: a sheet has hundreds of thousands. */
class Met implements Tag {
  readonly prefix: string;
  constructor(
    private readonly own: SaxesTagNS,
    readonly start: number,
    readonly open: number,
  ) {
    this.prefix = own.prefix && `${own.prefix}:`;
  }
  get name(): string {
    return this.own.name;
  }
  get local(): string {
    return this.own.local;
  }
  get uri(): string {
    return this.own.uri;
  }
  get closed(): boolean {
    return this.own.isSelfClosing;
  }
  attribute(name: string): string | undefined {
    return (this.own.attributes as Record<string, SaxesAttributeNSIncomplete>)[name]?.value;
  }
}

/** A tag with more said of it: what a tag answers by asking the parser, a copy of its fields would not. */
export const noted = <More extends object>(tag: Tag, more: More): Tag & More => Object.assign(Object.create(tag) as Tag, more);

/** Reads XML strictly, namespaces included, and tells what it meets; throws Unreadable where it is not well formed. */
export function scan(xml: string, { open, close, text }: Heard): void {
  const parser = new SaxesParser<{ xmlns: true; position: false }>({ xmlns: true, position: false });
  parser.on("error", () => {
    throw damagedPart();
  });
  const tags: Tag[] = [];
  parser.on("opentag", (tag: SaxesTagNS) => {
    // No attribute holds the sign that starts a tag.
    const one = new Met(tag, xml.lastIndexOf("<", parser.position - 1), parser.position);
    tags.push(one);
    open?.(one);
  });
  parser.on("closetag", () => close?.(tags.pop()!, parser.position));
  if (text) {
    parser.on("text", text);
    parser.on("cdata", text);
  }
  parser.write(xml).close();
}

/** Whether a part is well formed and every prefix in it is declared. */
export function isWhole(xml: string): boolean {
  try {
    scan(xml, {});
    return true;
  } catch {
    return false;
  }
}
