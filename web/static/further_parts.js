// How the program gets its further parts, the one that answers and the one that explains. This stands inside the
// program's own script, where `wasm` is the first part.
((load) => ({
  __wasm_split_load_answers: load("shared", "answers"),
  // asked for after the answers: what they share is there
  __wasm_split_load_explanations: load("explanations"),
}))((...names) => async (told, whom) => {
  let there = false;
  try {
    // Not before the form is on the screen; a page in the background is not painted.
    if (!document.hidden) await new Promise((done) => { requestAnimationFrame(() => { setTimeout(done); }); });
    const parts = await Promise.all(names.map((name) => wasm_bindgen.fetched(name)));
    for (const part of parts) {
      const bytes = part instanceof Response ? await part.arrayBuffer() : part;
      await WebAssembly.instantiate(bytes, { __wasm_split: wasm });
    }
    there = true;
  } catch (error) {
    console.info(`Quietpin's ${names.at(-1)} did not load: ${error}`);
  }
  wasm.__indirect_function_table.get(told)(whom, there);
});
