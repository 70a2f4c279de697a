/** Colours of the grid; page.css holds the same for what stands around it. */
export const ink = "#23302f";
export const quiet = "#6b7775";
export const teal = "#17595a";
export const tealPale = "#e9f2f0";
export const input = "#1d4f91";
export const paper = "#f7f6f2";
export const warn = "#9c2f1f";
export const warnPale = "#fbeae6";
