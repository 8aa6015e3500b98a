//! The page as a server hands it out: one file each, named by content.

use super::asset::{Asset, Sources};
use super::cut::Further;
use super::{compile, policy, template, worker};
use anyhow::Result;

pub(crate) const ENTRY: &str = "index.html";
pub(super) const WORKER: &str = "service_worker.js";
const MANIFEST: &str = "manifest.webmanifest";
/// When each further part of the program is loaded.
const FURTHER: [(&str, Load); 3] = [
    ("answers", Load::Next),
    ("details", Load::Last),
    // a test asks for it
    ("reports", Load::Other),
];
/// Drawn in the browser's tab.
pub(super) const TAB_ICON: &str = "icon.svg";
/// Drawn on the home screen of a phone that does not read the manifest.
const HOME_ICON: &str = "icon-192.png";

/// All files of the page; those that the service worker keeps stand before it.
pub(super) fn site(sources: &Sources) -> Result<Vec<Asset>> {
    let icons: Vec<_> = sources
        .icons
        .iter()
        .map(|(name, bytes)| (name.as_str(), Asset::hashed(name, bytes.clone())))
        .collect();
    let icon = |wanted| {
        icons.iter().find(|(name, _)| *name == wanted).map_or("", |(_, asset)| asset.name.as_str())
    };
    let style = Asset::hashed("style.css", sources.style.as_str());
    let glue = Asset::hashed("quietpin.js", sources.program.glue.as_str());
    let starter = Asset::hashed("start.js", sources.starter.as_str());
    let first = Asset::hashed("quietpin.wasm", sources.program.first.clone());
    let further: Vec<_> =
        sources.program.further.iter().map(|part| (part.name, modules(part))).collect();
    let head = head(&style.name, icon(TAB_ICON), icon(HOME_ICON));
    let scripts = scripts(&first.name, &further, &glue.name, &starter.name);
    let blanks = [("policy", policy::served()), ("head", head), ("scripts", scripts)];
    let entry = Asset::named(ENTRY, fill(&sources.entry, &blanks)?);
    let manifest = Asset::named(MANIFEST, manifest(&sources.manifest, &icons)?);

    let mut site = vec![entry, style, glue, starter, first, manifest];
    let (kept, others): (Vec<_>, Vec<_>) = further.into_iter().partition(|(name, _)| is_kept(name));
    site.extend(kept.into_iter().flat_map(|(_, modules)| modules));
    site.extend(icons.into_iter().map(|(_, asset)| asset));
    site.push(Asset::named(super::LICENCES, sources.licences.as_str()));
    let worker = worker::script(&sources.worker, &site)?;
    site.push(Asset::named(WORKER, compile::make_script_small(&worker)?));
    site.extend(others.into_iter().flat_map(|(_, modules)| modules));
    Ok(site)
}

/// The modules of a further part, its own last.
fn modules(part: &Further) -> Vec<Asset> {
    let own = part.modules.len().saturating_sub(1);
    let asset = |(at, module): (usize, &Vec<u8>)| {
        let kind = if at == own { "" } else { ".shared" };
        Asset::hashed(&format!("{}{kind}.wasm", part.name), module.as_slice())
    };
    part.modules.iter().enumerate().map(asset).collect()
}

fn head(style: &str, tab_icon: &str, home_icon: &str) -> String {
    format!(
        "<link rel=\"stylesheet\" href=\"{style}\">\n\
         <link rel=\"icon\" href=\"{tab_icon}\" type=\"image/svg+xml\">\n\
         <link rel=\"apple-touch-icon\" href=\"{home_icon}\">\n\
         <link rel=\"manifest\" href=\"{MANIFEST}\">"
    )
}

/// In the head, so that the program may empty the body; `defer` runs them in order, once the body is there.
fn scripts(first: &str, further: &[(&str, Vec<Asset>)], glue: &str, starter: &str) -> String {
    let names = |modules: &[Asset]| {
        let names: Vec<_> = modules.iter().map(|module| module.name.as_str()).collect();
        names.join(" ")
    };
    let part =
        |(part, modules): &(&str, Vec<Asset>)| format!(" data-{part}=\"{}\"", names(modules));
    let further = further.iter().map(part).collect::<Vec<_>>().concat();
    format!(
        "<link rel=\"preload\" href=\"{first}\" as=\"fetch\" type=\"application/wasm\" crossorigin>\n\
         <script src=\"{glue}\" defer></script>\n\
         <script src=\"{starter}\" data-program=\"{first}\"{further} data-worker=\"{WORKER}\" defer></script>"
    )
}

fn manifest(text: &str, icons: &[(&str, Asset)]) -> Result<String> {
    let used: Vec<_> = icons
        .iter()
        .filter(|(name, _)| text.contains(&format!("{{{{{name}}}}}")))
        .map(|(name, asset)| (*name, asset.name.as_str()))
        .collect();
    template::fill(text, &used)
}

pub(super) fn fill(text: &str, blanks: &[(&str, String)]) -> Result<String> {
    let blanks: Vec<_> = blanks.iter().map(|(name, value)| (*name, value.as_str())).collect();
    template::fill(text, &blanks)
}

/// When a browser asks for a file of its own accord.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Load {
    /// Before the page can be used.
    First,
    /// As soon as the page is on the screen.
    Next,
    /// Once it has answered.
    Last,
    /// Never, or only to be kept.
    Other,
}

/// Whether a page ever fetches this further part.
pub(super) fn is_kept(part: &str) -> bool {
    FURTHER.iter().any(|(name, when)| *name == part && *when != Load::Other)
}

/// When a browser asks for this file.
pub(crate) fn load(name: &str) -> Load {
    let begins_and_ends =
        |stem: &str, extension: &str| name.starts_with(stem) && name.ends_with(extension);
    if let Some((_, when)) = FURTHER.iter().find(|(part, _)| begins_and_ends(part, ".wasm")) {
        return *when;
    }
    // Of the icons, Chromium takes the one for the tab, and one of the manifest's when it offers to install.
    let is_other = [super::SINGLE, super::SCHEMA, super::LICENCES].contains(&name)
        || begins_and_ends("icon-512", ".png")
        || begins_and_ends("icon-maskable", ".png");
    if is_other { Load::Other } else { Load::First }
}
