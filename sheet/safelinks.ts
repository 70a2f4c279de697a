import type * as OSpreadsheet from "@odoo/o-spreadsheet";

export type Engine = Pick<typeof OSpreadsheet, "registries" | "links">;

type Drawing = new (
  ...args: never[]
) => {
  getCellText(position: OSpreadsheet.CellPosition, how?: object): string;
  readonly getters: OSpreadsheet.Getters;
};

/** What a link may lead to. An address without a scheme is a place on the web or beside the file. */
const kinds = new Set(["http", "https", "mailto", "tel", "ftp", "file", "o-spreadsheet"]);

const isUnsafe = (url: string): boolean => {
  const scheme = /^\s*([a-z][a-z0-9+.-]*):/i.exec(url)?.[1];
  return scheme !== undefined && !kinds.has(scheme.toLowerCase());
};

/** Text in the form of a link with an unsafe or unknown scheme stays text. */
export function keepLinksSafe({ registries: { urlRegistry, featurePluginRegistry }, links }: Engine): void {
  // The engine makes a link of whatever has the form of one; where its maker gives none, the cell holds the text.
  const none = {
    match: isUnsafe,
    createLink: () => undefined,
    open() {},
    urlRepresentation: (url: string) => url,
    sequence: -1,
    title: "",
  };
  urlRegistry.add("text", none as never);

  const Drawn = featurePluginRegistry.get("ui_sheet") as unknown as Drawing;
  class Whole extends Drawn {
    override getCellText(position: OSpreadsheet.CellPosition, how?: object): string {
      const text = super.getCellText(position, how);
      // It is drawn as its label alone wherever nothing follows it.
      return links.isMarkdownLink(text) && !this.getters.getEvaluatedCell(position).link ? `${text} ` : text;
    }
  }
  featurePluginRegistry.replace("ui_sheet", Whole as never);
}
