// The second copy of what is kept: in the browser's database, which is asked to have it on the disk before it says so. The
// first, in the browser's simple storage, answers at once, but reaches the disk up to a minute later: a browser that is killed,
// or an empty phone battery, would take that minute along.
"use strict";
const secondCopy = (() => {
  const STORE = "kept";
  const PLAN = "quietpin.plan.";
  // When something was last kept or removed in the first copy: what is older, and not there, was removed.
  const LATEST = "quietpin.latest";
  // So soon is written what is typed; what is typed meanwhile is written together.
  const SOON = 200;
  // The page does not wait longer than this for a database that does not answer.
  const PATIENCE = 3000;

  const answered = (request) => new Promise((done, fail) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
  });

  // Before each text stands when it was kept; one that is followed by nothing was removed.
  const time = (value) => parseInt(value, 10) || 0;
  const isRemoved = (value) => value.endsWith("\n");

  const opened = Promise.resolve().then(() => {
    const request = indexedDB.open("quietpin", 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    return answered(request);
  });
  // Where there is none, the first copy is all there is.
  opened.catch(() => {});

  const store = async () => (await opened).transaction(STORE, "readwrite", { durability: "strict" }).objectStore(STORE);

  let due = new Map();
  let timer;

  async function write() {
    clearTimeout(timer);
    timer = undefined;
    const now = due;
    due = new Map();
    try {
      const there = now.size && await store();
      for (const [name, value] of now) {
        // Another page may have kept a newer one.
        there.get(name).onsuccess = ({ target }) => {
          if (target.result === undefined || time(target.result) <= time(value)) there.put(value, name);
        };
      }
    } catch (error) {
      console.info(`Quietpin keeps no second copy: ${error}`);
    }
  }
  // The page may not come back from there.
  addEventListener("pagehide", write);
  document.addEventListener("visibilitychange", write);

  // Puts in the place of the first copy what is newer in the second; the newest such plan is the one that was open.
  async function restore(isLate) {
    const there = await store();
    const [names, values] = await Promise.all([answered(there.getAllKeys()), answered(there.getAll())]);
    if (isLate()) return;
    const latest = Number(localStorage.getItem(LATEST));
    let newest = 0;
    names.forEach((name, at) => {
      const value = values[at];
      const first = localStorage.getItem(name);
      if (isRemoved(value)) {
        if (first === null) there.delete(name);
        else if (time(first) < time(value)) localStorage.removeItem(name);
      } else if (first === null && time(value) <= latest) {
        there.delete(name);
      } else if (first === null || time(first) < time(value)) {
        localStorage.setItem(name, value);
        if (name.startsWith(PLAN) && time(value) > newest) {
          newest = time(value);
          localStorage.setItem("quietpin.open", name.slice(PLAN.length));
        }
      }
    });
  }

  return {
    keep(name, value) {
      due.set(name, value);
      try {
        if (time(value) > Number(localStorage.getItem(LATEST))) localStorage.setItem(LATEST, time(value));
      } catch (error) {
        console.info(`Quietpin's first copy is not kept: ${error}`);
      }
      timer ??= setTimeout(write, SOON);
    },
    restored() {
      let isOver = false;
      const late = new Promise((done) => { setTimeout(done, PATIENCE); });
      const all = restore(() => isOver).catch((error) => console.info(`Quietpin has no second copy: ${error}`));
      return Promise.race([all, late]).then(() => { isOver = true; });
    },
  };
})();
