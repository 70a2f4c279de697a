/** Light or dark: a style sheet has one set of colors for each. */
export const setTheme = (dark: boolean): void => {
  document.documentElement.dataset.theme = dark ? "dark" : "light";
};

/** Follows what the browser says; a program with themes of its own has the last word. */
export function followBrowser(): void {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const follow = () => setTheme(dark.matches);
  dark.addEventListener("change", follow);
  follow();
}

/** Whether a color such as "#1f1f1f" is nearer to black than to white. */
export function isDark(color: string): boolean {
  const parts = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/i.exec(color);
  if (!parts) return false;
  const [red, green, blue] = parts.slice(1).map((part) => Number.parseInt(part, 16));
  return 0.299 * red + 0.587 * green + 0.114 * blue < 128;
}
