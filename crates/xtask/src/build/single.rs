//! The page in one file: it opens from a phone's own storage, with no server.

use super::asset::Sources;
use super::page::{TAB_ICON, fill, is_kept};
use super::policy;
use crate::hash;
use anyhow::{Context, Result, bail};
use std::slice;

pub(super) fn page(sources: &Sources) -> Result<String> {
    let glue = as_inline(&sources.program.glue)?;
    let starter = as_inline(&sources.starter)?;
    let style = format!("\n{}", sources.style);
    if style.contains("</style") {
        bail!("the style sheet would end its own element");
    }
    let script = |name: &str, modules: &[Vec<u8>]| {
        let modules: Vec<_> = modules.iter().map(|module| hash::base64(module)).collect();
        format!("<script type=\"text/plain\" id=\"{name}\">{}</script>\n", modules.join(" "))
    };
    let parts = sources.program.further.iter().filter(|part| is_kept(part.name));
    let parts: String = parts.map(|part| script(part.name, &part.modules)).collect();
    let blanks = [
        ("policy", policy::single(&[&glue, &starter], &style)),
        ("head", format!("<style>{style}</style>\n{}", tab_icon(sources)?)),
        ("scripts", String::new()),
    ];
    let page = fill(&sources.entry, &blanks)?;
    // No `defer` without `src`: the scripts come last instead, after the body they report to.
    let scripts = format!(
        "{}{parts}{}<script>{glue}</script>\n<script>{starter}</script>\n</body>",
        script("program", slice::from_ref(&sources.program.first)),
        licences(&sources.licences)?,
    );
    match page.rsplit_once("</body>") {
        Some((before, after)) => Ok(format!("{before}{scripts}{after}")),
        None => bail!("index.html has no </body>"),
    }
}

/// Nothing shows them; whoever looks into the file finds them.
fn licences(texts: &str) -> Result<String> {
    let texts = as_inline(texts)?;
    Ok(format!("<script type=\"text/plain\" id=\"licences\">\n{texts}</script>\n"))
}

fn tab_icon(sources: &Sources) -> Result<String> {
    let icon = sources.icons.iter().find(|(name, _)| name == TAB_ICON);
    let (_, bytes) = icon.with_context(|| format!("web/static/{TAB_ICON} is not there"))?;
    Ok(format!("<link rel=\"icon\" href=\"data:image/svg+xml;base64,{}\">", hash::base64(bytes)))
}

/// A script inside HTML ends at the first `</script`, and `<!--` changes how it is read.
fn as_inline(script: &str) -> Result<String> {
    let lower = script.to_lowercase();
    if lower.contains("</script") || lower.contains("<!--") {
        bail!("a script of the page cannot stand inside HTML");
    }
    Ok(script.to_owned())
}
