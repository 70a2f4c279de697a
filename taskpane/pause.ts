/** How long nothing must be typed or pressed for a pause. */
const quiet = 2_000;

const leaving = "leave";
const events = ["pointerdown", "keydown", "input"] as const;

/** Tells that the person leaves what they were at: what waits for a pause waits no longer. */
export const leave = (): unknown => dispatchEvent(new Event(leaving));

/** Waits until nothing was typed or pressed for a while, or the person leaves. */
export const pause = (): Promise<void> =>
  new Promise((resolve) => {
    let timer: ReturnType<typeof setTimeout>;
    const over = () => {
      clearTimeout(timer);
      for (const event of events) removeEventListener(event, again, true);
      for (const event of [leaving, "pagehide", "blur"]) removeEventListener(event, over);
      resolve();
    };
    const again = () => {
      clearTimeout(timer);
      timer = setTimeout(over, quiet);
    };
    for (const event of events) addEventListener(event, again, true);
    for (const event of [leaving, "pagehide", "blur"]) addEventListener(event, over);
    again();
  });
