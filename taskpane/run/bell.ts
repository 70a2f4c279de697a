/** A bell and a notification for when a time is up; both only as far as the browser allows. */
export class Bell {
  private audio: AudioContext | undefined;

  /** Browsers allow sound only after a user gesture: call this from one. */
  wake(): void {
    try {
      this.audio ??= new AudioContext();
      if (this.audio.state === "suspended") void this.audio.resume();
    } catch {
      // Without sound the screen still shows that the time is up.
    }
  }

  /** Three strokes. */
  ring(): void {
    const { audio } = this;
    if (audio?.state !== "running") return;
    for (let stroke = 0; stroke < 3; stroke++) {
      const at = audio.currentTime + stroke * 0.7;
      const loudness = audio.createGain();
      loudness.connect(audio.destination);
      loudness.gain.setValueAtTime(0.0001, at);
      loudness.gain.exponentialRampToValueAtTime(0.6, at + 0.02);
      loudness.gain.exponentialRampToValueAtTime(0.0001, at + 0.65);
      for (const pitch of [880, 1320]) {
        const tone = audio.createOscillator();
        tone.frequency.value = pitch;
        tone.connect(loudness);
        tone.start(at);
        tone.stop(at + 0.65);
      }
    }
  }

  get mayNotify(): NotificationPermission | "never" {
    return "Notification" in globalThis ? Notification.permission : "never";
  }

  /** Asks to notify as well; the answer in words. */
  async invite(): Promise<string> {
    const answer = "Notification" in globalThis ? await Notification.requestPermission() : "never";
    return answer === "granted"
      ? "The bell rings, and a notification comes with it."
      : "The bell rings while this stays open. Notifications are off in this browser.";
  }

  async notify(words: string): Promise<void> {
    if (this.mayNotify !== "granted") return;
    const options = { body: words, tag: "porewise-run", requireInteraction: true };
    try {
      // Phones show notifications of a service worker only.
      const worker = await navigator.serviceWorker?.getRegistration();
      if (worker?.active) await worker.showNotification("Porewise", options);
      else new Notification("Porewise", options);
    } catch {
      // What the browser refuses here was allowed a moment ago: the page itself says it all the same.
    }
  }
}

/** Keeps the screen on while something counts down, where the browser can. */
export class Awake {
  private lock: WakeLockSentinel | undefined;
  private wanted = false;

  constructor() {
    document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && this.hold(this.wanted));
  }

  hold(on: boolean): void {
    this.wanted = on;
    if (!on) {
      void this.lock?.release().catch(() => undefined);
      this.lock = undefined;
    } else if (!this.lock || this.lock.released)
      void navigator.wakeLock?.request("screen").then(
        (lock) => {
          this.lock = lock;
        },
        () => undefined,
      );
  }
}
