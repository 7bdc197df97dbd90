// Registers the service worker that stores the page on the device, and offers a new version when one is ready.

import { notice } from "./notices.js";
import { words } from "./words.js";

const againMs = 60_000;

/** `mayReload` returns whether all work is saved, so that a new version may be loaded; it is the last chance to save. */
export async function keepOffline(mayReload) {
  if (!("serviceWorker" in navigator) || !/^https?:$/.test(location.protocol)) return;
  const container = navigator.serviceWorker;
  let asked = false;
  let reloaded = false;
  const ruledBefore = container.controller !== null;
  const reload = () => {
    if (reloaded) return;
    reloaded = true;
    location.reload();
  };
  const ask = (sentence, load) => notice("version", sentence, [[words.notices.reload, () => {
    if (mayReload()) load();
    else notice("version", words.notices.newVersionWaits, [[words.notices.reload, load]]);
  }]]);
  container.addEventListener("controllerchange", () => {
    if (asked) reload();
    else if (ruledBefore) ask(words.notices.newVersionTaken, reload);
  });

  const register = () => container.register(new URL("service-worker.js", document.baseURI));
  let registration;
  try {
    registration = await register();
  } catch {
    return; // The page works without it, but not offline.
  }
  const offer = () => {
    const { waiting } = registration;
    if (!waiting || !container.controller) return;
    ask(words.notices.newVersion, () => {
      asked = true;
      waiting.postMessage("take over");
    });
  };
  offer();
  const look = () => (registration.active ? registration.update() : register()).catch(() => {}); // No network: nothing to report.
  const follow = (worker) => worker?.addEventListener("statechange", () => {
    if (worker.state === "installed") offer();
    // A version that is not there whole, such as one that its host is just being given, is asked for again.
    if (worker.state === "redundant") setTimeout(look, againMs);
  });
  follow(registration.installing);
  registration.addEventListener("updatefound", () => follow(registration.installing));
  look();
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && look());
}
