//! Where a constant is used that is worked out when the program runs.

use std::collections::{BTreeMap, BTreeSet};

use proc_macro2::{TokenStream, TokenTree};
use quote::ToTokens;

use crate::splice::Splices;

/// A module of the core: `output/judge.rs` is `output`, `judge`.
pub(crate) type Module = Vec<String>;

/// The module of a file, by its path below `crates/core/src`.
pub(crate) fn module(path: &str) -> Module {
    path.strip_suffix(".rs").unwrap_or(path).split('/').map(str::to_owned).collect()
}

/// The constants that are worked out when the program runs.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Late {
    /// By name, the modules that have one of it.
    pub(crate) there: BTreeMap<String, BTreeSet<Module>>,
    /// Names that no other constant has: wherever they are imported from, they lead to it.
    pub(crate) alone: BTreeSet<String>,
}

/// A file, as far as its names lead to constants.
#[derive(Debug)]
pub(crate) struct Names<'a> {
    late: &'a Late,
    module: Module,
    /// What it imports: each path to its end.
    imports: Vec<Vec<String>>,
    /// The constants that it has itself.
    pub(crate) own: BTreeSet<String>,
}

impl<'a> Names<'a> {
    /// Reads what a file imports and what it has.
    pub(crate) fn of(module: Module, tokens: &TokenStream, late: &'a Late) -> Self {
        let mut names = Self { late, module, imports: Vec::new(), own: BTreeSet::new() };
        names.read(tokens);
        names
    }

    fn read(&mut self, tokens: &TokenStream) {
        let trees: Vec<_> = tokens.clone().into_iter().collect();
        let mut at = 0;
        while let Some(tree) = trees.get(at) {
            match tree {
                TokenTree::Group(group) => self.read(&group.stream()),
                TokenTree::Ident(word) if word == "use" && !is_mark(&trees, at + 1, '<') => {
                    let end = end_of_use(&trees, at);
                    self.import(trees.get(at + 1..end).unwrap_or_default(), &[]);
                    at = end;
                }
                TokenTree::Ident(word) if word == "const" || word == "static" => {
                    if let Some(TokenTree::Ident(name)) = trees.get(at + 1) {
                        self.own.insert(name.to_string());
                    }
                }
                TokenTree::Ident(_) | TokenTree::Punct(_) | TokenTree::Literal(_) => {}
            }
            at += 1;
        }
    }

    fn import(&mut self, trees: &[TokenTree], before: &[String]) {
        for one in trees.split(|it| matches!(it, TokenTree::Punct(mark) if mark.as_char() == ',')) {
            let mut path = before.to_vec();
            for tree in one {
                match tree {
                    TokenTree::Ident(name) => path.push(name.to_string()),
                    TokenTree::Punct(mark) if mark.as_char() == '*' => path.push("*".to_owned()),
                    TokenTree::Group(group) => {
                        let inner: Vec<_> = group.stream().into_iter().collect();
                        self.import(&inner, &path);
                        path.clear();
                    }
                    TokenTree::Punct(_) | TokenTree::Literal(_) => {}
                }
            }
            if !path.is_empty() {
                self.imports.push(path);
            }
        }
    }

    /// Whether a path that ends in a constant's name leads to one that is worked out when the program runs.
    fn is_late(&self, path: &[String]) -> bool {
        let Some((name, before)) = path.split_last() else { return false };
        let Some(there) = self.late.there.get(name) else { return false };
        let is_alone = self.late.alone.contains(name);
        if !before.is_empty() {
            return self.leads(before, there);
        }
        if self.own.contains(name) {
            return there.contains(&self.module);
        }
        self.imports.iter().any(|import| {
            let Some((last, to)) = import.split_last() else { return false };
            (last == name && is_alone) || ((last == name || last == "*") && self.leads(to, there))
        })
    }

    /// Whether a path leads to one of these modules.
    fn leads(&self, path: &[String], there: &BTreeSet<Module>) -> bool {
        let parent = || self.module.split_last().map(|(_, rest)| rest.to_vec()).unwrap_or_default();
        match path.last().map(String::as_str) {
            None | Some("Self" | "crate") => false,
            Some("self") => there.contains(&self.module),
            // also from within the tests of a file
            Some("super") => there.contains(&parent()) || there.contains(&self.module),
            Some(name) => there.iter().any(|it| it.last().is_some_and(|last| last == name)),
        }
    }

    /// Whether an expression uses one.
    pub(crate) fn are_in(&self, it: &impl ToTokens) -> bool {
        let mut splices = Splices::default();
        self.mark(&it.to_token_stream(), &mut splices);
        !splices.is_empty()
    }

    /// Marks each use.
    pub(crate) fn mark(&self, tokens: &TokenStream, splices: &mut Splices) {
        let trees: Vec<_> = tokens.clone().into_iter().collect();
        let mut at = 0;
        while let Some(tree) = trees.get(at) {
            match tree {
                TokenTree::Group(group) => self.mark(&group.stream(), splices),
                TokenTree::Ident(word) if word == "use" && !is_mark(&trees, at + 1, '<') => {
                    at = end_of_use(&trees, at);
                }
                TokenTree::Ident(word) if word == "const" || word == "static" => at += 1,
                TokenTree::Ident(word) if self.late.there.contains_key(&word.to_string()) => {
                    self.mark_use(&trees, at, splices);
                }
                TokenTree::Ident(_) | TokenTree::Punct(_) | TokenTree::Literal(_) => {}
            }
            at += 1;
        }
    }

    fn mark_use(&self, trees: &[TokenTree], at: usize, splices: &mut Splices) {
        let is_mark = |at: Option<usize>, mark: char| at.is_some_and(|at| is_mark(trees, at, mark));
        let is_path_on = is_mark(Some(at + 1), ':') && is_mark(Some(at + 2), ':');
        let is_given = is_mark(Some(at + 1), '=')
            && !["=", ">"].iter().any(|it| is_mark(Some(at + 2), it.chars().next().unwrap_or(' ')));
        let is_field = is_mark(at.checked_sub(1), '.') && !is_mark(at.checked_sub(2), '.');
        if is_path_on || is_given || is_field {
            return;
        }
        let mut first = at;
        let mut path = Vec::new();
        let word = |at: usize| match trees.get(at) {
            Some(TokenTree::Ident(word)) => Some(word.to_string()),
            _ => None,
        };
        path.extend(word(at));
        while is_mark(first.checked_sub(1), ':') && is_mark(first.checked_sub(2), ':') {
            let Some(before) = first.checked_sub(3).and_then(word) else { break };
            path.insert(0, before);
            first -= 3;
        }
        if !self.is_late(&path) {
            return;
        }
        let (Some(begin), Some(end)) = (trees.get(first), trees.get(at)) else { return };
        let piece = begin.span().byte_range().start..end.span().byte_range().end;
        splices.around(&piece, "(*", ")");
    }
}

fn is_mark(trees: &[TokenTree], at: usize, mark: char) -> bool {
    matches!(trees.get(at), Some(TokenTree::Punct(found)) if found.as_char() == mark)
}

fn end_of_use(trees: &[TokenTree], from: usize) -> usize {
    let rest = trees.get(from..).unwrap_or_default();
    let is_end = |it: &TokenTree| matches!(it, TokenTree::Punct(mark) if mark.as_char() == ';');
    from + rest.iter().position(is_end).unwrap_or(rest.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn marked(here: &str, text: &str, late: &[(&str, &str)]) -> String {
        let mut constants = Late::default();
        for (path, name) in late {
            constants.there.entry((*name).to_owned()).or_default().insert(module(path));
        }
        let tokens: TokenStream = text.parse().expect("it is Rust");
        let mut splices = Splices::default();
        Names::of(module(here), &tokens, &constants).mark(&tokens, &mut splices);
        splices.put_into(text)
    }

    #[test]
    fn a_use_is_marked_wherever_its_name_leads_to_the_constant() {
        let late = [("output/judge.rs", "HAIR"), ("tables/fuses.rs", "HOLDS")];
        for (here, text, expected) in [
            (
                "output/judge.rs",
                "const HAIR: f64 = 1.03; f(HAIR);",
                "const HAIR: f64 = 1.03; f((*HAIR));",
            ),
            ("coil.rs", "const HAIR: f64 = 1.03; f(HAIR);", "const HAIR: f64 = 1.03; f(HAIR);"),
            ("coil.rs", "f(fuses::HOLDS * 2.0);", "f((*fuses::HOLDS) * 2.0);"),
            ("coil.rs", "f(wires::HOLDS);", "f(wires::HOLDS);"),
            (
                "coil.rs",
                "use crate::tables::fuses::{HOLDS, GATES}; say!(a, b = HOLDS)",
                "use crate::tables::fuses::{HOLDS, GATES}; say!(a, b = (*HOLDS))",
            ),
            (
                "coil.rs",
                "fn f() -> impl It + use<'_> { let a = HAIR; } use super::output::judge::HAIR;",
                "fn f() -> impl It + use<'_> { let a = (*HAIR); } use super::output::judge::HAIR;",
            ),
            ("output/drain.rs", "f(super::judge::HAIR)", "f((*super::judge::HAIR))"),
            ("output/judge/tests.rs", "use super::*; f(HAIR)", "use super::*; f((*HAIR))"),
            (
                "words.rs",
                "sentences! { HOLDS = \"a\", \"b\"; } f(words::HOLDS)",
                "sentences! { HOLDS = \"a\", \"b\"; } f(words::HOLDS)",
            ),
        ] {
            assert_eq!(marked(here, text, &late), expected, "{here}");
        }
    }

    #[test]
    fn an_array_that_is_read_by_rows_is_marked_as_a_whole() {
        let found = marked(
            "tables/fuses.rs",
            "for gate in &GATES { HOLDS::f(it.GATES) }",
            &[("tables/fuses.rs", "GATES")],
        );
        assert_eq!(found, "for gate in &GATES { HOLDS::f(it.GATES) }", "it imports none");
        let own = "static GATES: u8 = 1; for gate in &GATES { it.GATES }";
        let found = marked("tables/fuses.rs", own, &[("tables/fuses.rs", "GATES")]);
        assert_eq!(found, "static GATES: u8 = 1; for gate in &(*GATES) { it.GATES }");
    }
}
