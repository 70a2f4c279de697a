import type { SheetHost } from "../shared/host";

let spell = (formula: string): string => formula;

/** Asks the host for its list separator, for formulas that a person copies out of the pane. */
export async function learn(host: SheetHost): Promise<void> {
  spell = (await host.typedThere?.()) ?? spell;
}

/** A formula with the separators of the person's own Excel. */
export const spoken = (formula: string): string => spell(formula);
