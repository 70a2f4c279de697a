/** Registers the service worker, which opens the page without a network. */
export function followOffline(): void {
  const workers = navigator.serviceWorker;
  if (!workers) return;
  workers.register("offline.js").then(
    (registration: ServiceWorkerRegistration | undefined) => {
      // A browser told to have no worker answers with none. A newer version takes over when this page is gone: a page and its files are of one version.
      addEventListener("pagehide", () => registration?.waiting?.postMessage("take over"));
    },
    () => undefined,
  );
}
