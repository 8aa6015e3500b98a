// How the program gets its further parts. This stands inside the program's own script, where `wasm` is the first part.
((load) => ({
  __wasm_split_load_answers: load("answers"),
  // asked for after the answers: what they have in common is there
  __wasm_split_load_details: load("details"),
  __wasm_split_load_reports: load("reports"),
}))((part) => async (told, whom) => {
  let there = false;
  try {
    // Not before the form is on the screen; a page in the background is not painted.
    if (!document.hidden) await new Promise((done) => { requestAnimationFrame(() => { setTimeout(done); }); });
    for (const module of await Promise.all(wasm_bindgen.fetched(part))) {
      const bytes = module instanceof Response ? await module.arrayBuffer() : module;
      await WebAssembly.instantiate(bytes, { __wasm_split: wasm }).catch((error) => {
        wasm_bindgen.misplace();
        throw error;
      });
    }
    there = true;
  } catch (error) {
    console.info(`Quietpin's ${part} did not load: ${error}`);
  }
  wasm.__indirect_function_table.get(told)(whom, there);
});
