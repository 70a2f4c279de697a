import "../../taskpane/inside";

/** A frame of the pane, open at a view. Pages opened from a disk are of different origins: a page that is one file hands over the pane's HTML by srcdoc instead. */
export function paneFrame(title: string, view = ""): HTMLIFrameElement {
  const frame = Object.assign(document.createElement("iframe"), { title });
  const inside = globalThis.porewiseInside?.("pane.html");
  if (inside) frame.srcdoc = new TextDecoder().decode(inside).replace("<html ", `<html data-view="${view}" `);
  else frame.src = `pane.html${view}`;
  return frame;
}
