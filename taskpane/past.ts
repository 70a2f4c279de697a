const most = 50;

/** The state before each change, for Undo. */
export class Past<T> {
  private states: T[] = [];

  get isEmpty(): boolean {
    return !this.states.length;
  }

  add(state: T): void {
    this.states = [...this.states, state].slice(-most);
  }

  back(): T | undefined {
    return this.states.pop();
  }

  clear(): void {
    this.states = [];
  }
}
