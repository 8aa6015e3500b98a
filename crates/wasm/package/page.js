// Quietpin for a page: the program is fetched from beside this file, before whoever imports this goes on.
import * as program from "./quietpin.js";

const answer = await fetch(new URL("quietpin.wasm", import.meta.url));
if (!answer.ok) throw new Error(`${answer.url}: ${answer.status}`);
// by its bytes: a server need not know the type of such a file
const { instance } = await WebAssembly.instantiate(await answer.arrayBuffer(), { "./quietpin_bg.js": program });
program.__wbg_set_wasm(instance.exports);
instance.exports.__wbindgen_start();

export { fields, parse, report, version } from "./quietpin.js";
