//! The Rust files of the workspace, read as a compiler reads them: what is built for tests is left out.

use std::{
    fs,
    path::{Path, PathBuf},
    sync::OnceLock,
};

use proc_macro2::{TokenStream, TokenTree};
use syn::{Attribute, Item, visit::Visit};

/// A Rust file.
#[derive(Debug)]
pub(crate) struct Source {
    /// Its path from the top of the project, with `/`.
    pub(crate) path: String,
    /// Its text.
    pub(crate) text: String,
}

/// What stands in a file, outside tests.
#[derive(Debug, Default)]
pub(crate) struct Contents {
    /// The modules of the crate that it names, each with its line: `crate::fields` gives `fields`.
    pub(crate) modules: Vec<(String, usize)>,
    /// Each sentence that it declares: code, words, line.
    pub(crate) declared: Vec<(String, String, usize)>,
    /// Each text in quotes, wherever it stands, with its line.
    pub(crate) texts: Vec<(String, usize)>,
    /// The types that it declares, each with its line; an associated type is its trait's.
    pub(crate) types: Vec<(String, usize)>,
    /// The modules that it declares for tests alone.
    pub(crate) tests: Vec<String>,
}

/// The Rust files under a folder of the project, by path.
pub(crate) fn under(folder: &str) -> Vec<Source> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut paths = Vec::new();
    gather(&top.join(folder), &mut paths);
    paths.sort();
    assert!(!paths.is_empty(), "there are sources in {folder}");
    let source = |path: &PathBuf| Source {
        path: path.strip_prefix(&top).expect("under the top").to_string_lossy().replace('\\', "/"),
        text: fs::read_to_string(path).expect("a text"),
    };
    paths.iter().map(source).collect()
}

/// The core's files by path, each with what stands in it: read once for all tests.
pub(crate) fn of_the_core() -> &'static [(String, Contents)] {
    static CORE: OnceLock<Vec<(String, Contents)>> = OnceLock::new();
    let read = |source: Source| {
        let contents = source.contents();
        (source.path, contents)
    };
    CORE.get_or_init(|| under("crates/core/src").into_iter().map(read).collect())
}

/// What stands in each of these files that is not built for tests alone, by path.
pub(crate) fn outside_tests(sources: &[Source]) -> Vec<(&str, Contents)> {
    let read: Vec<_> =
        sources.iter().map(|source| (source.path.as_str(), source.contents())).collect();
    let for_tests: Vec<_> = read
        .iter()
        .flat_map(|(path, contents)| contents.tests.iter().map(|module| child(path, module)))
        .collect();
    let is_for_tests = |path: &str| {
        for_tests.iter().any(|module| {
            path.strip_prefix(module.as_str())
                .is_some_and(|rest| rest == ".rs" || rest.starts_with('/'))
        })
    };
    read.into_iter().filter(|(path, _)| !is_for_tests(path)).collect()
}

/// The file of a module that another declares, without its `.rs`.
fn child(path: &str, module: &str) -> String {
    let folder = path
        .strip_suffix("lib.rs")
        .map_or_else(|| format!("{}/", path.strip_suffix(".rs").unwrap_or(path)), str::to_owned);
    format!("{folder}{module}")
}

fn gather(folder: &Path, paths: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            let name = path.file_name().unwrap_or_default();
            if name != "node_modules" && name != "target" {
                gather(&path, paths);
            }
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            paths.push(path);
        }
    }
}

impl Source {
    /// What stands in it.
    pub(crate) fn contents(&self) -> Contents {
        let file =
            syn::parse_file(&self.text).unwrap_or_else(|error| panic!("{}: {error}", self.path));
        let mut contents = Contents::default();
        contents.visit_file(&file);
        contents
    }
}

impl<'ast> Visit<'ast> for Contents {
    fn visit_item(&mut self, item: &'ast Item) {
        if is_for_tests(attributes(item)) {
            if let Item::Mod(module) = item {
                self.tests.push(module.ident.to_string());
            }
            return;
        }
        if let Some(name) = type_name(item) {
            self.types.push((name.to_string(), name.span().start().line));
        }
        syn::visit::visit_item(self, item);
    }

    fn visit_use_path(&mut self, path: &'ast syn::UsePath) {
        if path.ident == "crate" {
            self.first_names(&path.tree);
        }
        syn::visit::visit_use_path(self, path);
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        let mut segments = path.segments.iter();
        let is_own = segments.next().is_some_and(|first| first.ident == "crate");
        if let Some(module) = segments.next().filter(|_| is_own) {
            self.module(&module.ident);
        }
        syn::visit::visit_path(self, path);
    }

    fn visit_macro(&mut self, call: &'ast syn::Macro) {
        if call.path.segments.last().is_some_and(|name| name.ident == "sentences") {
            self.sentences(call.tokens.clone());
        }
        self.tokens(call.tokens.clone());
        syn::visit::visit_macro(self, call);
    }

    fn visit_lit_str(&mut self, literal: &'ast syn::LitStr) {
        self.texts.push((literal.value(), literal.span().start().line));
    }

    /// A doc comment is an attribute with a text in it: it names things, it uses none.
    fn visit_attribute(&mut self, _attribute: &'ast Attribute) {}
}

impl Contents {
    /// The names with which a tree of uses begins.
    fn first_names(&mut self, tree: &syn::UseTree) {
        match tree {
            syn::UseTree::Path(path) => self.module(&path.ident),
            syn::UseTree::Name(name) => self.module(&name.ident),
            syn::UseTree::Rename(name) => self.module(&name.ident),
            syn::UseTree::Group(group) => {
                group.items.iter().for_each(|item| self.first_names(item));
            }
            syn::UseTree::Glob(_) => {}
        }
    }

    fn module(&mut self, name: &proc_macro2::Ident) {
        self.modules.push((name.to_string(), name.span().start().line));
    }

    /// `NAME = "code", "words";`, one after the other.
    fn sentences(&mut self, tokens: TokenStream) {
        let literals = tokens.into_iter().filter_map(|tree| match tree {
            TokenTree::Literal(literal) => Some(literal),
            TokenTree::Group(_) | TokenTree::Ident(_) | TokenTree::Punct(_) => None,
        });
        let literals: Vec<_> = literals.collect();
        for pair in literals.chunks(2) {
            let [code, text] = pair else { panic!("a sentence has a code and words") };
            self.declared.push((unquoted(code), unquoted(text), code.span().start().line));
        }
    }

    /// Macros hold tokens, not items: their types and their `crate::` paths are found by sight. A `type` there may be
    /// an associated one, so it is passed over.
    fn tokens(&mut self, tokens: TokenStream) {
        let trees: Vec<_> = tokens.into_iter().collect();
        for (at, tree) in trees.iter().enumerate() {
            match tree {
                // a doc comment, here too
                TokenTree::Group(_)
                    if at.checked_sub(1).and_then(|it| trees.get(it)).is_some_and(is_hash) => {}
                TokenTree::Group(group) => self.tokens(group.stream()),
                TokenTree::Literal(literal) => {
                    if let Ok(text) = syn::parse_str::<syn::LitStr>(&literal.to_string()) {
                        self.texts.push((text.value(), literal.span().start().line));
                    }
                }
                TokenTree::Ident(name) if name == "crate" => {
                    if let Some(TokenTree::Ident(module)) = trees.get(at + 3) {
                        self.module(module);
                    }
                }
                TokenTree::Ident(keyword) if TYPES.iter().any(|it| keyword == it) => {
                    if let Some(TokenTree::Ident(name)) = trees.get(at + 1) {
                        self.types.push((name.to_string(), name.span().start().line));
                    }
                }
                TokenTree::Ident(_) | TokenTree::Punct(_) => {}
            }
        }
    }
}

fn is_hash(tree: &TokenTree) -> bool {
    matches!(tree, TokenTree::Punct(sign) if sign.as_char() == '#')
}

/// What a literal says, its line ends taken out as the compiler does.
fn unquoted(literal: &proc_macro2::Literal) -> String {
    let text: syn::LitStr = syn::parse_str(&literal.to_string()).expect("a text in quotes");
    text.value()
}

/// What declares a type or a trait, apart from `type`.
const TYPES: [&str; 4] = ["struct", "enum", "union", "trait"];

/// The name of the type or the trait that an item declares.
fn type_name(item: &Item) -> Option<&proc_macro2::Ident> {
    match item {
        Item::Struct(it) => Some(&it.ident),
        Item::Enum(it) => Some(&it.ident),
        Item::Union(it) => Some(&it.ident),
        Item::Trait(it) => Some(&it.ident),
        Item::Type(it) => Some(&it.ident),
        _ => None,
    }
}

fn attributes(item: &Item) -> &[Attribute] {
    match item {
        Item::Fn(it) => &it.attrs,
        Item::Impl(it) => &it.attrs,
        Item::Mod(it) => &it.attrs,
        Item::Use(it) => &it.attrs,
        Item::Const(it) => &it.attrs,
        Item::Static(it) => &it.attrs,
        Item::Struct(it) => &it.attrs,
        Item::Enum(it) => &it.attrs,
        Item::Union(it) => &it.attrs,
        Item::Trait(it) => &it.attrs,
        Item::Type(it) => &it.attrs,
        Item::Macro(it) => &it.attrs,
        _ => &[],
    }
}

fn is_for_tests(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|attribute| match &attribute.meta {
        syn::Meta::List(list) if list.path.is_ident("cfg") => list.tokens.to_string() == "test",
        _ => false,
    })
}

#[test]
fn sources_are_read_as_a_compiler_reads_them() {
    let source = Source {
        path: "it.rs".into(),
        text: r#"
            //! Not crate::doc.
            use crate::{message::Message, say, words};
            sentences! {
                // nor crate::comment
                ONE = "a.one", "one";
                /// nor "this"
                TWO = "b.two", "two \
                    lines";
            }
            fn f() { let x = crate::plan::get(&[say!(words::ONE, n = "said")]); vec![crate::read::it()] }
            #[cfg(test)]
            mod tests { use crate::report; }
        "#
        .into(),
    };
    let contents = source.contents();
    let modules: Vec<_> = contents.modules.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(modules, ["message", "say", "words", "plan", "read"]);
    let declared: Vec<_> =
        contents.declared.iter().map(|(code, text, _)| (code.as_str(), text.as_str())).collect();
    assert_eq!(declared, [("a.one", "one"), ("b.two", "two lines")]);
    assert_eq!(contents.declared[1].2, 8, "with its line");
    assert_eq!(contents.modules[3].1, 11, "with its line");
    let texts: Vec<_> = contents.texts.iter().map(|(text, _)| text.as_str()).collect();
    assert_eq!(texts, ["a.one", "one", "b.two", "two lines", "said"], "no comment among them");
}
