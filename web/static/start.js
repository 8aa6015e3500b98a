// Starts the program, and says so calmly where that fails: a page that has stopped must not look as if it still answered.
"use strict";
(() => {
  const own = document.currentScript.dataset;

  // Inside a page of somebody else, a press may not be what it seems to be: the page works in a window of its own alone.
  if (top !== self) {
    const link = document.createElement("a");
    Object.assign(link, { href: location.href, target: "_blank", rel: "noopener", textContent: "Open it in a page of its own." });
    document.querySelector("[role=status]").replaceChildren("Quietpin does not work inside another page. ", link);
    return;
  }

  function bytesOf(base64) {
    return Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  }

  // The parts of the program, of one module or several: inside the page in one file, found by the server's names for them
  // otherwise.
  const inside = Object.fromEntries(
    Array.from(document.querySelectorAll("script[id]"), (script) => [script.id, script]),
  );

  // Whether what was sent last is not of this page: a newer version has taken its place on the server, or it is broken.
  let misplaced = false;

  async function fetchedFrom(name) {
    const answer = await fetch(name);
    misplaced ||= answer.status === 404 || answer.status === 410;
    if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
    return answer;
  }

  function fetched(part) {
    // Asking again can't bring what is not there: the newer version is asked for.
    if (misplaced) location.reload();
    return inside[part] ? inside[part].textContent.split(" ").map(bytesOf) : own[part].split(" ").map(fetchedFrom);
  }

  // The program keeps all that it keeps under names that begin like this.
  const KEPT = "quietpin";

  // Storage may be denied altogether; then nothing was kept either.
  function keptText() {
    try {
      const names = Object.keys(localStorage).filter((name) => name.startsWith(KEPT));
      const entries = names.map((name) => [name, localStorage.getItem(name)]);
      return entries.length ? JSON.stringify(Object.fromEntries(entries), null, 1) : null;
    } catch {
      return null;
    }
  }

  function element(name, text) {
    const made = document.createElement(name);
    made.textContent = text;
    return made;
  }

  function button(text, act) {
    const made = element("button", text);
    made.type = "button";
    made.addEventListener("click", act);
    return made;
  }

  function save(text) {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
    link.download = "quietpin-kept.json";
    link.click();
  }

  let told = false;
  function tell(title, advice, detail) {
    if (told) return;
    told = true;
    const dialog = document.createElement("dialog");
    dialog.id = "stopped";
    const heading = element("h2", title);
    heading.id = "stopped-title";
    dialog.setAttribute("aria-labelledby", heading.id);
    dialog.append(heading, element("p", advice), element("p", `What the browser says: ${detail}`));
    dialog.append(button("Load the page again", () => location.reload()));
    const kept = keptText();
    if (kept) dialog.append(" ", button("Save a copy of what is kept here", () => save(kept)));
    document.body.append(dialog);
    dialog.showModal();
  }

  function tellFailedStart(error) {
    const advice = typeof WebAssembly === "object"
      ? "Load the page again. If it stays like this: update the browser, or open Quietpin in another one."
      : "This browser has no WebAssembly, with which Quietpin computes. Update it, or open Quietpin in another one.";
    tell("Quietpin could not start.", advice, error);
  }

  // A panic in the program arrives as a trap, from whichever handler it happened in.
  function tellTrap(error) {
    if (typeof WebAssembly !== "object" || !(error instanceof WebAssembly.RuntimeError)) return;
    const advice = "The answers on the page no longer follow what you type: do not rely on them. "
      + "What was saved in this browser is still there; load the page again to go on.";
    tell("Quietpin has stopped because of a mistake of its own.", advice, error);
  }
  addEventListener("error", (event) => tellTrap(event.error));
  addEventListener("unhandledrejection", (event) => tellTrap(event.reason));

  // An old browser may know neither the script's syntax nor WebAssembly: then the binding is not there.
  Promise.resolve()
    .then(async () => {
      wasm_bindgen.fetched = fetched;
      wasm_bindgen.misplace = () => { misplaced = true; };
      wasm_bindgen.isMisplaced = () => misplaced;
      wasm_bindgen.keep = secondCopy.keep;
      const [program] = fetched("program");
      await secondCopy.restored();
      return wasm_bindgen({ module_or_path: program });
    })
    .catch((error) => tellFailedStart(error));

  // Browsers offer service workers over HTTPS and on this machine only; a file has none.
  if (own.worker && "serviceWorker" in navigator) {
    addEventListener("load", () => {
      navigator.serviceWorker.register(own.worker).catch((error) => {
        console.warn(`Quietpin will not open without a network: ${error}`);
      });
    });
  }
})();
