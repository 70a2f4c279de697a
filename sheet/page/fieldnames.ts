/** Accessible names for the engine's unlabeled fields, taken from the words that a person sees beside them. */

const sectionTitle = ".o-section-title, .o-sidePanelTitle, label";

function nameFor(field: HTMLElement): string {
  if (field.closest(".o-named-range-selector")) return "Go to a cell: type its address";
  if (field.classList.contains("o-grid-add-rows-input")) return "How many rows to add";
  const titled = field.closest<HTMLElement>("[title]")?.title;
  const placeholder = field.getAttribute("placeholder");
  const section = field.closest(".o-section")?.querySelector(sectionTitle)?.textContent?.trim();
  return titled || placeholder || section || "Value";
}

const isNamed = (field: HTMLElement): boolean =>
  field.hasAttribute("aria-label") || field.hasAttribute("aria-labelledby") || Boolean((field as HTMLInputElement).labels?.length);

/** Names the fields that are there, and those that are added later. */
export function nameFields(place: HTMLElement): void {
  let due = false;
  const name = () => {
    due = false;
    for (const field of place.querySelectorAll<HTMLElement>("input, select, textarea"))
      if (!isNamed(field)) field.setAttribute("aria-label", nameFor(field));
    for (const figure of place.querySelectorAll<HTMLElement>(".o-figure:not([aria-label])")) {
      figure.setAttribute("role", "group");
      figure.setAttribute("aria-label", "Chart of the numbers on this sheet");
    }
  };
  new MutationObserver(() => {
    if (due) return;
    due = true;
    requestAnimationFrame(name);
  }).observe(place, { childList: true, subtree: true });
  name();
}
