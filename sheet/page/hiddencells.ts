import type { Model, Zone } from "@odoo/o-spreadsheet";

interface Selection {
  checkAnchorZone(anchor: { readonly zone: Zone }): string;
}

/**
 * Going to a cell in a hidden row or column selects it, as in other programs. The engine refuses silently, and what is
 * typed next lands in the cell that was chosen before.
 */
export function reachHidden({ selection, getters }: Model): void {
  const inner = selection as unknown as Selection;
  const check = inner.checkAnchorZone.bind(inner);
  inner.checkAnchorZone = (anchor) => {
    const answer = check(anchor);
    const isThere = () => getters.checkZonesExistInSheet(getters.getActiveSheetId(), [anchor.zone]) === "Success";
    return answer === "SelectionOutOfBound" && isThere() ? "Success" : answer;
  };
}
