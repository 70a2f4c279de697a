/** Asks and tells in the page, one thing after the other. */
export class Asker {
  private last: Promise<unknown> = Promise.resolve();

  constructor(private readonly dialog: HTMLDialogElement) {}

  /** Resolves to the answer; closing the question without one is a no. */
  ask(title: string, words: string, yes: string, no: string): Promise<boolean> {
    const answer = this.last.then(() => this.show(title, words, yes, no));
    this.last = answer;
    return answer;
  }

  tell(words: string): Promise<boolean> {
    return this.ask("Please note", words, "OK", "");
  }

  private show(title: string, words: string, yes: string, no: string): Promise<boolean> {
    const { dialog } = this;
    dialog.querySelector("h2")!.textContent = title;
    dialog.querySelector("p")!.textContent = words;
    const [keep, go] = dialog.querySelectorAll("button");
    keep.textContent = no;
    keep.hidden = no === "";
    go.textContent = yes;
    dialog.returnValue = "no";
    dialog.showModal();
    return new Promise((answer) => dialog.addEventListener("close", () => answer(dialog.returnValue === "yes"), { once: true }));
  }
}
