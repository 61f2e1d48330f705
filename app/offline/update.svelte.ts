/** Tells when a newer app has been fetched. It is taken when the person says so, never in the middle of a trip. */
class Update {
  isWaiting = $state(false);
  #waiting: ServiceWorker | null = null;

  begin(): void {
    if (!("serviceWorker" in navigator) || !import.meta.env.PROD) return;
    navigator.serviceWorker
      .register("./sw.js", { scope: "./" })
      .then((registration) => this.#follow(registration))
      .catch(() => {
        // Opened from a place that allows none: the page works, but not offline.
      });
  }

  take(): void {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
    this.#waiting?.postMessage({ type: "SKIP_WAITING" });
  }

  #follow(registration: ServiceWorkerRegistration): void {
    const see = (worker: ServiceWorker | null): void => {
      // The very first one has nothing to take over from.
      if (worker === null || navigator.serviceWorker.controller === null) return;
      this.#waiting = worker;
      this.isWaiting = true;
    };
    see(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const coming = registration.installing;
      coming?.addEventListener("statechange", () => {
        if (coming.state === "installed") see(coming);
      });
    });
  }
}

export const update = new Update();
