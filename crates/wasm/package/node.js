// Quietpin for Node.js: the program is read from the file beside this one.
import { readFileSync } from "node:fs";
import * as program from "./quietpin.js";

const module = new WebAssembly.Module(readFileSync(new URL("quietpin.wasm", import.meta.url)));
const { exports } = new WebAssembly.Instance(module, { "./quietpin_bg.js": program });
program.__wbg_set_wasm(exports);
exports.__wbindgen_start();

export { fields, parse, report, version } from "./quietpin.js";
