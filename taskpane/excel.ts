import type { SheetHost } from "../shared/host";

/** Excel's host, once Excel says that it is there; undefined where this page stands in no Excel. */
export async function excel(): Promise<SheetHost | undefined> {
  return undefined;
}
