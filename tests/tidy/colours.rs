//! The colours about the page are the page's own.

use std::{fs, path::Path};

fn text(path: &str) -> String {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    fs::read_to_string(root.join(path)).expect(path)
}

/// The quoted or declared colours that follow each `mark`, in the order of the file.
fn colours(text: &str, mark: &str) -> Vec<String> {
    let after = text.split(mark).skip(1);
    after.filter_map(|rest| Some(rest.get(rest.find('#')?..)?.get(..7)?.to_owned())).collect()
}

#[test]
fn what_surrounds_the_page_has_the_colour_of_its_paper() {
    let papers = colours(&text("web/style/1-sheet.css"), "--paper:");
    let [light, dark] = &*papers else { panic!("a light paper and a dark one: {papers:?}") };
    assert_eq!(colours(&text("index.html"), "name=\"theme-color\""), [light.as_str(), dark]);
    let manifest = text("web/static/manifest.webmanifest");
    assert_eq!(colours(&manifest, "\"theme_color\""), [light.as_str()]);
    assert_eq!(colours(&manifest, "\"background_color\""), [light.as_str()]);
}
