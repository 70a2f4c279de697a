/** The engine's templates with the ARIA roles, names and tab stops that they lack. */

/** Text of the package's file, and its replacement on this page. */
const changes: readonly (readonly [from: string, to: string])[] = [
  ['class="o-topbar-topleft d-flex"', 'class="o-topbar-topleft d-flex" role="menubar" aria-label="Menus"'],
  ['class="o-topbar-menu o-hoverable-button', 'role="menuitem" aria-haspopup="true" tabindex="-1" class="o-topbar-menu o-hoverable-button'],
  ['class="o-menu"', 'role="menu" class="o-menu"'],
  [
    'tabIndex="-1"\n            t-att-title="getName(menuItem)"',
    'tabIndex="-1" role="menuitem" t-att-aria-disabled="isMenuEnabled ? false : \'true\'" t-att-aria-haspopup="isMenuRoot ? \'true\' : false"\n            t-att-title="getName(menuItem)"',
  ],
  ['class="o-separator border-bottom"', 'role="separator" class="o-separator border-bottom"'],
  ['class="o-sheet-list d-flex w-100 px-1"', 'role="tablist" aria-label="Sheets" class="o-sheet-list d-flex w-100 px-1"'],
  [
    'class="o-sheet d-flex',
    'role="tab" t-att-aria-selected="isSheetActive ? \'true\' : \'false\'" t-att-aria-label="sheetName" class="o-sheet d-flex',
  ],
  [
    'class="o-sheet-item o-add-sheet me-2 p-1"',
    'class="o-sheet-item o-add-sheet me-2 p-1" role="button" aria-label="Add a sheet" title="Add a sheet"',
  ],
  [
    'class="o-sheet-item o-list-sheets me-2 p-1"',
    'class="o-sheet-item o-list-sheets me-2 p-1" role="button" aria-label="All sheets" title="All sheets"',
  ],
  ['class="py-1 px-1 mx-2 ribbon-toggler"', 'class="py-1 px-1 mx-2 ribbon-toggler" role="button" aria-label="Menus" title="Menus"'],
  // A positive tabindex would come before everything else on the page.
  ['tabindex="1"', 'tabindex="0"'],
  ['class="o-composer w-100 text-start"', 'role="textbox" aria-multiline="true" aria-label="Cell" class="o-composer w-100 text-start"'],
  ['class="o-grid w-100 h-100 o-zoomable"', 'role="group" aria-label="Cells" class="o-grid w-100 h-100 o-zoomable"'],
  ['<canvas t-ref="canvas"/>', '<canvas t-ref="canvas" aria-hidden="true"/>'],
  ['title="confirm edition"', 'title="Done" role="button" aria-label="Done"'],
  ["Readonly Access", "Open in another tab: it can only be read here"],
];

/** The templates as this page mounts them. */
export const adapted = (templates: string): string => changes.reduce((text, [from, to]) => text.replaceAll(from, to), templates);
