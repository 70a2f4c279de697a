/**
 * Says in words that a file of the page did not arrive, and what to do. A script of its own, before all others: whatever else
 * fails, this one has run.
 */

const place = () => document.getElementById("halt");

function halt(words: string): void {
  const section = place();
  // Once the page is loaded, a failed picture is no reason to stop.
  if (!section || document.documentElement.dataset.ready) return;
  section.dataset.failed = "";
  section.querySelector("h2")!.textContent = "Porewise did not start";
  const [said] = section.getElementsByTagName("p");
  const again = said.querySelector("a")!;
  said.replaceChildren(`${words} What you typed before is kept in this browser. Check the connection, then `, again, ".");
}

const nameOf = (address: string): string => new URL(address, location.href).pathname.split("/").pop() ?? address;

addEventListener(
  "error",
  ({ target }) => {
    if (target instanceof HTMLScriptElement) halt(`The file ${nameOf(target.src)} could not be loaded.`);
    else if (target instanceof HTMLLinkElement && target.rel === "stylesheet") halt(`The file ${nameOf(target.href)} could not be loaded.`);
  },
  { capture: true },
);

addEventListener("halt", (event) => halt((event as CustomEvent<string>).detail));
