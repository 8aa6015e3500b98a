//! Which file a request means.

use std::path::{Path, PathBuf};

/// The file inside `folder` that `url` asks for; none if it does not exist, or lies outside.
pub(super) fn locate(folder: &Path, url: &str) -> Option<PathBuf> {
    let path = url.split(['?', '#']).next()?.strip_prefix('/')?;
    let path = if path.is_empty() { "index.html" } else { path };
    // The build makes one flat folder of plain names: whatever else is asked for is not there.
    let plain = path.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"-_.".contains(&byte));
    if !plain || path.starts_with('.') {
        return None;
    }
    let file = folder.join(path);
    // Not a link to somewhere else, either.
    let real = file.canonicalize().ok()?;
    (real.is_file() && real.parent() == Some(folder)).then_some(real)
}

/// The media type by the file's ending.
pub(super) fn media_type(path: &Path) -> &'static str {
    match path.extension().and_then(|extension| extension.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        Some("txt") => "text/plain; charset=utf-8",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;

    /// A folder with one file, and a secret beside it.
    fn folder() -> PathBuf {
        let folder = std::env::temp_dir().join(format!("quietpin-serve-{}", std::process::id()));
        fs::create_dir_all(folder.join("site")).unwrap();
        fs::write(folder.join("secret.txt"), "secret").unwrap();
        fs::write(folder.join("site").join("index.html"), "page").unwrap();
        folder.join("site").canonicalize().unwrap()
    }

    #[test]
    fn the_top_is_the_entry() {
        let site = folder();
        assert_eq!(locate(&site, "/?from=home"), Some(site.join("index.html")), "with a query");
        assert_eq!(locate(&site, "/index.html"), Some(site.join("index.html")), "by name");
    }

    #[test]
    fn nothing_outside_is_served() {
        let site = folder();
        let tries = [
            "/../secret.txt",
            "/%2e%2e/secret.txt",
            "/..%2fsecret.txt",
            "//etc/passwd",
            "/..\\secret.txt",
            "/..",
        ];
        for url in tries {
            assert_eq!(locate(&site, url), None, "{url}");
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_link_out_of_the_folder_is_not_followed() {
        let site = folder();
        let link = site.join("link.txt");
        if !link.exists() {
            std::os::unix::fs::symlink(site.join("..").join("secret.txt"), &link).unwrap();
        }
        assert_eq!(locate(&site, "/link.txt"), None, "a link");
    }

    #[test]
    fn a_browser_compiles_wasm_only_by_its_own_type() {
        assert_eq!(media_type(Path::new("a-1.wasm")), "application/wasm", "streaming needs it");
    }
}
