import type { Model } from "@odoo/o-spreadsheet";
import type { Part } from "./keys";
import type { Pane } from "./pane";
import { press, rove } from "./roving";

/** Animation frames to wait for a menu. */
const patience = 120;

const within = (place: HTMLElement) => (at: Element) => place.contains(at);

/** Keyboard navigation between the parts of the page. */
export class Ways {
  constructor(
    private readonly grid: HTMLElement,
    private readonly model: () => Model,
  ) {
    rove(grid, ".o-topbar-menu", (menu) => this.openMenu(menu));
    rove(grid, ".o-sheet", ({ dataset }) => this.openSheet(dataset.id!));
  }

  readonly toGrid = (): void => {
    window.focus();
    this.grid.querySelector<HTMLElement>(".o-grid-composer .o-composer, .o-grid .o-composer")?.focus();
  };

  /** A cell that is being typed into takes what was typed when it loses the focus. */
  finish(): void {
    (document.activeElement as HTMLElement | null)?.blur();
    this.toGrid();
  }

  /** The browser would print only the visible part of the sheet: the grid's own preview prints all of it. */
  readonly print = (event: KeyboardEvent): void => {
    event.preventDefault();
    this.toGrid();
    const { key, code, ctrlKey, metaKey } = event;
    document.activeElement?.dispatchEvent(new KeyboardEvent("keydown", { key, code, ctrlKey, metaKey, bubbles: true, cancelable: true }));
  };

  private focus(selector: string): boolean {
    const item = this.grid.querySelector<HTMLElement>(selector);
    if (!item?.offsetParent) return false;
    item.focus();
    return document.activeElement === item;
  }

  /** The first button of the bar, menus, cells, sheets, pane, cautions. */
  parts(head: HTMLElement, pane: Pane, cautions: HTMLElement): Part[] {
    const isOf = (selector: string) => (at: Element) => at.closest(selector) !== null;
    const menus = ".o-spreadsheet-topbar-wrapper";
    const sheets = ".o-spreadsheet-bottombar-wrapper";
    return [
      { name: "buttons", holds: within(head), enter: () => focusFirst(head) },
      { name: "menus", holds: isOf(menus), enter: () => this.focus(`${menus} .o-topbar-menu`) },
      {
        name: "cells",
        holds: (at) => this.grid.contains(at) && !at.closest(`${menus}, ${sheets}`),
        enter: () => {
          this.toGrid();
          return true;
        },
      },
      { name: "sheets", holds: isOf(sheets), enter: () => this.focus(`${sheets} .o-sheet.active`) },
      { name: "pane", holds: (at) => pane.holds(at), enter: () => pane.focus() },
      {
        name: "cautions",
        holds: (at) => at === cautions,
        enter: () => {
          cautions.focus();
          return true;
        },
      },
    ];
  }

  /** A menu opened by keys has its first entry under them. */
  private openMenu(menu: HTMLElement): void {
    press(menu);
    const list = () => document.querySelector<HTMLElement>(".o-menu-wrapper");
    const enter = (frames: number) => {
      const there = list();
      if (!there && frames) return requestAnimationFrame(() => enter(frames - 1));
      there?.focus();
      return there?.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowDown", bubbles: true, cancelable: true }));
    };
    enter(patience);
  }

  private openSheet(id: string): void {
    const model = this.model();
    model.dispatch("ACTIVATE_SHEET", { sheetIdFrom: model.getters.getActiveSheetId(), sheetIdTo: id });
    this.toGrid();
  }
}

function focusFirst(place: HTMLElement): boolean {
  const first = [...place.querySelectorAll<HTMLElement>("button")].find(({ offsetParent }) => offsetParent);
  first?.focus();
  return first !== undefined;
}
