//! What cargo starts for a test compiled for wasm32: wasm-bindgen's runner, of the workspace's own version.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
}
