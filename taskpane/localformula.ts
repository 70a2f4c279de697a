import type { SheetHost } from "../shared/host";

let spell = (formula: string): string => formula;

/** Learns how formulas are typed in this host, for those that a person copies out of the pane. */
export async function learn(host: SheetHost): Promise<void> {
  spell = (await host.typedThere?.()) ?? spell;
}

/** A formula as the reader would type it. */
export const spoken = (formula: string): string => spell(formula);
