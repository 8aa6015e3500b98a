//! Where a mutant can stand in a file, and what is written there so that it can be switched on.

use std::{collections::BTreeSet, mem, ops::Range};

use syn::{
    Attribute, BinOp, Expr, ExprBinary, ExprLit, Item, ItemConst, Lit, LitFloat,
    spanned::Spanned,
    visit::{self, Visit},
};

use crate::{
    planted::{self, As, Planted},
    scope,
    splice::Splices,
};

/// A change that can be switched on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Mutant {
    /// Its number.
    pub(crate) id: u32,
    /// Of which kind it is.
    pub(crate) kind: Kind,
    /// The file it stands in, below `crates/core/src`.
    pub(crate) file: String,
    /// The line it stands on, from 1.
    pub(crate) line: usize,
    /// The text of that line.
    pub(crate) text: String,
    /// What it makes of what.
    pub(crate) change: String,
}

/// Of what a mutant is one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Kind {
    /// A comparison, or what joins two.
    Comparison,
    /// A limit or a trade value.
    Constant,
    /// A limit that is typed or counted.
    Planted,
}

/// What is found in a file.
#[derive(Debug, Default)]
pub(crate) struct Found {
    /// What can be switched on.
    pub(crate) mutants: Vec<Mutant>,
    /// What is put into its text.
    pub(crate) splices: Splices,
    /// The names of its constants that are worked out when the program runs.
    pub(crate) constants: BTreeSet<String>,
}

/// What can be changed in a file, numbered on from `next`. `late` tells of a constant whether it needs another one that is
/// worked out when the program runs.
pub(crate) fn find(
    path: &str,
    text: &str,
    next: u32,
    late: &BTreeSet<String>,
) -> syn::Result<Found> {
    let file = syn::parse_file(text)?;
    let mut sites =
        Sites { path, lines: text.lines().collect(), next, late, found: Found::default() };
    sites.visit_file(&file);
    for limit in planted::ALL.iter().filter(|it| it.file == path) {
        for at in planted::places(limit, text) {
            sites.planted(limit, at, text);
        }
    }
    Ok(sites.found)
}

struct Sites<'a> {
    path: &'a str,
    lines: Vec<&'a str>,
    next: u32,
    late: &'a BTreeSet<String>,
    found: Found,
}

/// What a number is part of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    /// A constant, a row, a limit of a comparison, so many of a unit.
    Table,
    /// A formula.
    Formula,
}

impl Sites<'_> {
    fn mutant(&mut self, kind: Kind, at: &impl Spanned, change: String) {
        let line = at.span().start().line;
        let text = self.lines.get(line - 1).unwrap_or(&"").trim().to_owned();
        let file = self.path.to_owned();
        self.found.mutants.push(Mutant { id: self.next, kind, file, line, text, change });
        self.next += 1;
    }

    fn comparison(&mut self, it: &ExprBinary) {
        let (was, others): (&str, &[&str]) = match it.op {
            BinOp::Lt(_) => ("<", &["<=", ">="]),
            BinOp::Le(_) => ("<=", &["<", ">"]),
            BinOp::Gt(_) => (">", &[">=", "<="]),
            BinOp::Ge(_) => (">=", &[">", "<"]),
            BinOp::Eq(_) => ("==", &["!="]),
            BinOp::Ne(_) => ("!=", &["=="]),
            _ => return,
        };
        let id = self.next;
        for other in others {
            self.mutant(Kind::Comparison, &it.op, format!("`{was}` is `{other}`"));
        }
        let call = match others {
            [one, other] => {
                format!("crate::mutant::pick({id}, *l {was} *r, *l {one} *r, *l {other} *r)")
            }
            _ => format!("((*l {was} *r) != crate::mutant::is_on({id}))"),
        };
        let splices = &mut self.found.splices;
        // both sides are worked out once, and compared in all ways
        splices.around(&range(it), "(match (&(", &format!(")) {{ (l, r) => {call} }})"));
        splices.instead(&range(&it.op), "), &(");
    }

    /// The second half is still worked out only where it is needed.
    fn junction(&mut self, it: &ExprBinary) {
        let (was, other) = match it.op {
            BinOp::And(_) => ("&&", "||"),
            BinOp::Or(_) => ("||", "&&"),
            _ => return,
        };
        if has_let(&it.left) || has_let(&it.right) {
            return;
        }
        let id = self.next;
        self.mutant(Kind::Comparison, &it.op, format!("`{was}` is `{other}`"));
        let (need, rest) = if was == "&&" { ("l", "l") } else { ("!l", "l") };
        let splices = &mut self.found.splices;
        splices.around(&range(it), "(match (", &format!(") }} else {{ {rest} }} }})"));
        splices.instead(
            &range(&it.op),
            &format!(") {{ l => if ({need}) != crate::mutant::is_on({id}) {{ ("),
        );
    }

    fn number(&mut self, it: &LitFloat, part: Part) {
        let Ok(number) = it.base10_parse::<f64>() else { return };
        if scope::is_slack(number) || (part == Part::Formula && scope::is_of_a_formula(number)) {
            return;
        }
        self.scaled(it, it.base10_digits());
    }

    fn scaled(&mut self, it: &impl Spanned, shown: &str) {
        let id = self.next;
        for change in ["+", "−"] {
            self.mutant(Kind::Constant, it, format!("{shown} {change} 10 %"));
        }
        let before = format!("crate::mutant::scaled({id}, ");
        self.found.splices.around(&range(it), &before, ")");
    }

    fn planted(&mut self, limit: &Planted, at: usize, text: &str) {
        let line = text.get(..at).unwrap_or_default().lines().count();
        let (id, what) = (self.next, limit.what);
        let (call, changes): (&str, &[&str]) = match limit.how {
            As::Number => ("scaled", &["+ 10 %", "− 10 %"]),
            As::Quantity => ("scaled_quantity", &["+ 10 %", "− 10 %"]),
            As::Count => ("one_more", &["+ 1"]),
        };
        for change in changes {
            let text = self.lines.get(line - 1).unwrap_or(&"").trim().to_owned();
            let (file, change) = (self.path.to_owned(), format!("{what} {change}"));
            let kind = Kind::Planted;
            self.found.mutants.push(Mutant { id: self.next, kind, file, line, text, change });
            self.next += 1;
        }
        let before = format!("crate::mutant::{call}({id}, ");
        self.found.splices.around(&(at..at + limit.limit.len()), &before, ")");
    }

    /// A number that stands here by itself, a sign before it or not; anything else is walked through.
    fn of(&mut self, it: &Expr, part: Part) {
        match it {
            Expr::Lit(ExprLit { lit: Lit::Float(number), .. }) => self.number(number, part),
            Expr::Unary(unary) if matches!(unary.op, syn::UnOp::Neg(_)) => {
                self.of(&unary.expr, part);
            }
            _ => self.visit_expr(it),
        }
    }

    /// A constant becomes a static that is worked out at its first use.
    fn constant(&mut self, it: &ItemConst) {
        let name = it.ident.to_string();
        if scope::is_left_out(self.path, &name) {
            return;
        }
        let (before, mut splices) = (self.next, mem::take(&mut self.found.splices));
        Initialiser(self).visit_expr(&it.expr);
        // a constant that stands for another one, such as the root of two
        if self.next == before && is_f64(&it.ty) && matches!(&*it.expr, Expr::Path(_)) {
            self.scaled(&it.expr, &name);
        }
        if self.next > before || self.late.contains(&name) {
            self.found.constants.insert(name);
            make_late(it, &mut splices);
        }
        // what stands in it is within
        splices.append(&mut self.found.splices);
        self.found.splices = splices;
    }
}

/// A constant that is worked out at its first use.
fn make_late(it: &ItemConst, splices: &mut Splices) {
    splices.instead(&range(&it.const_token), "static");
    splices.around(&range(&it.ty), "std::sync::LazyLock<", ">");
    if let Expr::Reference(reference) = &*it.expr {
        let leaked = "std::sync::LazyLock::new(|| &*Box::leak(Box::new(";
        splices.instead(&range(&reference.and_token), leaked);
        splices.around(&range(&*reference.expr), "", ")))");
    } else {
        splices.around(&range(&*it.expr), "std::sync::LazyLock::new(|| ", ")");
    }
}

/// The numbers of a constant: each is a trade value.
struct Initialiser<'a, 'b>(&'a mut Sites<'b>);

impl<'ast> Visit<'ast> for Initialiser<'_, '_> {
    fn visit_expr(&mut self, it: &'ast Expr) {
        match it {
            Expr::Lit(ExprLit { lit: Lit::Float(number), .. }) => {
                self.0.number(number, Part::Table);
            }
            Expr::Closure(_) => {}
            _ => visit::visit_expr(self, it),
        }
    }
}

impl<'ast> Visit<'ast> for Sites<'_> {
    fn visit_item(&mut self, it: &'ast Item) {
        match it {
            _ if is_for_tests(attributes(it)) => {}
            Item::Const(constant) => self.constant(constant),
            Item::Fn(function) if function.sig.constness.is_some() => {}
            Item::Static(_) | Item::Macro(_) => {}
            _ => visit::visit_item(self, it),
        }
    }

    fn visit_impl_item(&mut self, it: &'ast syn::ImplItem) {
        match it {
            syn::ImplItem::Const(_) => {}
            syn::ImplItem::Fn(function)
                if function.sig.constness.is_some() || is_for_tests(&function.attrs) => {}
            _ => visit::visit_impl_item(self, it),
        }
    }

    fn visit_trait_item_const(&mut self, _: &'ast syn::TraitItemConst) {}

    /// What a pattern or a type holds is known when the program is built.
    fn visit_pat(&mut self, _: &'ast syn::Pat) {}

    fn visit_type(&mut self, _: &'ast syn::Type) {}

    fn visit_generic_argument(&mut self, _: &'ast syn::GenericArgument) {}

    fn visit_expr_repeat(&mut self, it: &'ast syn::ExprRepeat) {
        self.of(&it.expr, Part::Formula);
    }

    fn visit_expr(&mut self, it: &'ast Expr) {
        match it {
            Expr::Lit(ExprLit { lit: Lit::Float(number), .. }) => {
                self.number(number, Part::Formula);
            }
            Expr::Binary(binary) => {
                let before = self.next;
                self.comparison(binary);
                let is_limit = self.next > before;
                self.junction(binary);
                let part = if is_limit { Part::Table } else { Part::Formula };
                self.of(&binary.left, part);
                self.of(&binary.right, part);
            }
            Expr::Range(range) => {
                for end in [&range.start, &range.end].into_iter().flatten() {
                    self.of(end, Part::Table);
                }
            }
            Expr::Tuple(tuple) if tuple.elems.iter().all(is_number) => {
                tuple.elems.iter().for_each(|elem| self.of(elem, Part::Table));
            }
            Expr::Call(call) if is_unit(&call.func) => {
                call.args.iter().for_each(|arg| self.of(arg, Part::Table));
            }
            Expr::Const(_) => {}
            _ => visit::visit_expr(self, it),
        }
    }

    /// What a macro of ours or a list is given are expressions as any others.
    fn visit_macro(&mut self, it: &'ast syn::Macro) {
        let is_read = ["vec", "say", "say_of"].iter().any(|name| it.path.is_ident(name));
        if !is_read {
            return;
        }
        let comma = syn::punctuated::Punctuated::<Expr, syn::Token![,]>::parse_terminated;
        let Ok(given) = it.parse_body_with(comma) else { return };
        for expr in &given {
            match expr {
                Expr::Assign(assign) => self.visit_expr(&assign.right),
                _ => self.visit_expr(expr),
            }
        }
    }
}

fn range(it: &impl Spanned) -> Range<usize> {
    it.span().byte_range()
}

fn has_let(it: &Expr) -> bool {
    match it {
        Expr::Let(_) => true,
        Expr::Binary(binary) => has_let(&binary.left) || has_let(&binary.right),
        _ => false,
    }
}

fn is_number(it: &Expr) -> bool {
    match it {
        Expr::Lit(ExprLit { lit: Lit::Float(_), .. }) => true,
        Expr::Unary(unary) => is_number(&unary.expr),
        _ => false,
    }
}

/// What makes a quantity of a number.
fn is_unit(function: &Expr) -> bool {
    const UNITS: &[&str] = &[
        "amperes",
        "ampere_hours",
        "celsius",
        "henries",
        "hertz",
        "joules",
        "metres",
        "ohms",
        "rpm",
        "seconds",
        "share",
        "volts",
        "watts",
    ];
    let Expr::Path(path) = function else { return false };
    path.path.segments.last().is_some_and(|last| UNITS.iter().any(|unit| last.ident == unit))
}

fn is_f64(it: &syn::Type) -> bool {
    matches!(it, syn::Type::Path(path) if path.path.is_ident("f64"))
}

fn attributes(it: &Item) -> &[Attribute] {
    match it {
        Item::Fn(it) => &it.attrs,
        Item::Impl(it) => &it.attrs,
        Item::Mod(it) => &it.attrs,
        Item::Const(it) => &it.attrs,
        _ => &[],
    }
}

fn is_for_tests(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|attribute| {
        attribute.path().is_ident("test")
            || matches!(&attribute.meta, syn::Meta::List(list)
                if list.path.is_ident("cfg") && list.tokens.to_string() == "test")
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn changed(text: &str) -> (String, Vec<String>) {
        let found = find("coil.rs", text, 10, &BTreeSet::new()).expect("it is Rust");
        let changes = found.mutants.iter().map(|it| it.change.clone()).collect();
        (found.splices.put_into(text), changes)
    }

    fn in_a_function(body: &str) -> (String, Vec<String>) {
        let (text, changes) = changed(&format!("fn f() {{ {body} }}"));
        (text.trim_start_matches("fn f() { ").trim_end_matches(" }").to_owned(), changes)
    }

    #[test]
    fn both_sides_of_a_comparison_are_worked_out_once() {
        let (text, changes) = in_a_function("a.f() < b");
        let call = "crate::mutant::pick(10, *l < *r, *l <= *r, *l >= *r)";
        assert_eq!(text, format!("(match (&(a.f() ), &( b)) {{ (l, r) => {call} }})"));
        assert_eq!(changes, ["`<` is `<=`", "`<` is `>=`"]);
        let (text, changes) = in_a_function("a==b");
        let call = "((*l == *r) != crate::mutant::is_on(10))";
        assert_eq!(text, format!("(match (&(a), &(b)) {{ (l, r) => {call} }})"));
        assert_eq!(changes, ["`==` is `!=`"]);
    }

    #[test]
    fn the_second_half_is_worked_out_where_it_is_needed() {
        let (text, changes) = in_a_function("a && b");
        assert_eq!(
            text,
            "(match (a ) { l => if (l) != crate::mutant::is_on(10) { ( b) } else { l } })"
        );
        assert_eq!(changes, ["`&&` is `||`"]);
        let (text, _) = in_a_function("a || b");
        assert!(text.contains("if (!l) != crate::mutant::is_on(10)"), "{text}");
        assert_eq!(in_a_function("if let Some(a) = b && c {}").1, [""; 0], "a pattern may bind");
    }

    /// What is written for `&&` and `||`, worked out for all that can be on both sides.
    #[test]
    fn what_is_written_for_two_conditions_is_both_of_them_and_with_the_mutant_either() {
        for (left, right) in [(false, false), (false, true), (true, false), (true, true)] {
            let written = |need: bool, on: bool| if need == on { left } else { right };
            assert_eq!(written(left, false), left && right);
            assert_eq!(written(left, true), left || right);
            assert_eq!(written(!left, false), left || right);
            assert_eq!(written(!left, true), left && right);
        }
    }

    #[test]
    fn a_comparison_within_another_expression_is_changed_alone() {
        let (text, changes) = in_a_function("x.filter(|it| it.a > 0.0 && it.b <= 1.0)");
        assert_eq!(changes.len(), 7, "one, twice two, and two of the limit 1.0: {changes:?}");
        assert!(syn::parse_str::<Expr>(&text).is_ok(), "{text}");
    }

    #[test]
    fn a_limit_is_scaled_and_what_is_mathematics_is_not() {
        let (text, changes) = in_a_function("a * 1.3 + b / 60.0 + 2.0 * c");
        assert_eq!(text, "a * crate::mutant::scaled(10, 1.3) + b / 60.0 + 2.0 * c");
        assert_eq!(changes, ["1.3 + 10 %", "1.3 − 10 %"]);
        assert_eq!(in_a_function("amperes(1.0)").1.len(), 2, "an ampere is a limit");
        assert_eq!(
            in_a_function("match a { 5.0..=6.0 => (0.5, -1.0), _ => (0.0, 0.0) }").1.len(),
            4
        );
        assert_eq!(in_a_function("(-30.0..=90.0).contains(&a)").1.len(), 4, "the ends of a range");
    }

    #[test]
    fn a_constant_is_worked_out_at_its_first_use() {
        let (text, changes) = changed("/// It.\npub const HOT_W: f64 = 1.0;");
        assert_eq!(
            text,
            "/// It.\npub static HOT_W: std::sync::LazyLock<f64> = \
             std::sync::LazyLock::new(|| crate::mutant::scaled(10, 1.0));"
        );
        assert_eq!(changes.len(), 2);
        let (text, changes) = changed("const ROWS: [(f64, f64); 1] = [(1.35, 600.0)];");
        assert!(
            text.contains("[(crate::mutant::scaled(10, 1.35), crate::mutant::scaled(12, 600.0))]"),
            "{text}"
        );
        assert_eq!(changes.len(), 4);
        let (text, _) = changed("const ROWS: &[f64] = &[1.0];");
        assert!(
            text.ends_with("&*Box::leak(Box::new([crate::mutant::scaled(10, 1.0)])));"),
            "{text}"
        );
    }

    #[test]
    fn what_is_built_for_tests_or_worked_out_before_is_left() {
        for text in [
            "#[cfg(test)] mod tests { fn f() { a < 3.5 } }",
            "#[test] fn f() { a < 3.5 }",
            "const fn f() -> bool { a < 3.5 }",
            "const SAME_DEG: u32 = 3;",
            "fn f(a: [f64; 2 < 3]) {}",
            "fn f() { match a { 3.5 => 1, _ => 2 } }",
        ] {
            assert_eq!(changed(text), (text.to_owned(), Vec::new()));
        }
    }
}
