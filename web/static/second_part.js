// How the program gets its second part, the one that answers. This stands inside the program's own script, where `wasm`
// is the first part.
({
  async __wasm_split_load_answers(told, whom) {
    let there = false;
    try {
      // Not before the form is on the screen; a page in the background is not painted.
      if (!document.hidden) await new Promise((done) => { requestAnimationFrame(() => { setTimeout(done); }); });
      const part = await wasm_bindgen.fetched("answers");
      const bytes = part instanceof Response ? await part.arrayBuffer() : part;
      await WebAssembly.instantiate(bytes, { __wasm_split: wasm });
      there = true;
    } catch (error) {
      console.info(`Quietpin's second part did not load: ${error}`);
    }
    wasm.__indirect_function_table.get(told)(whom, there);
  },
});
