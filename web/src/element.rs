//! Elements of the page, put together in one place.
//!
//! `html!` writes the putting together out at each element, and those bytes are most of what a page of plain
//! elements weighs. Here an element costs a call. Components stay with `html!`.
//!
//! Every part of an element has its own place, and keeps it whether it is there or not: a part that comes or goes
//! must not make its neighbours anew, or the letter that is being typed is lost.

mod listening;

use std::rc::Rc;

use yew::{
    AttrValue, Html,
    virtual_dom::{AttributeOrProperty, Attributes, Key, VList, VNode, VTag, VText},
};

pub(crate) use listening::{Step, on, on_click, on_swipe, on_typing};

/// What an attribute may be set to; `None`, and `false`, leave it away.
pub(crate) trait Setting {
    fn setting(&self) -> Option<AttrValue>;
}

impl Setting for &'static str {
    fn setting(&self) -> Option<AttrValue> {
        Some(AttrValue::Static(self))
    }
}

impl Setting for String {
    fn setting(&self) -> Option<AttrValue> {
        Some(shared(self))
    }
}

impl Setting for &String {
    fn setting(&self) -> Option<AttrValue> {
        Some(shared(self))
    }
}

impl Setting for bool {
    fn setting(&self) -> Option<AttrValue> {
        self.then_some(AttrValue::Static(""))
    }
}

impl<T: Setting> Setting for Option<T> {
    fn setting(&self) -> Option<AttrValue> {
        self.as_ref()?.setting()
    }
}

/// A piece of the page. It stands behind a pointer, so that handing it on takes few bytes of program.
pub(crate) struct View(Box<VNode>);

impl From<Html> for View {
    fn from(html: Html) -> Self {
        Self(Box::new(html))
    }
}

impl From<View> for Html {
    fn from(view: View) -> Self {
        *view.0
    }
}

/// What may stand inside an element: words, another element, or one that is there or not.
pub(crate) trait Part {
    fn part(self) -> Option<View>;
}

impl Part for View {
    fn part(self) -> Option<View> {
        Some(self)
    }
}

impl Part for Option<View> {
    fn part(self) -> Option<View> {
        self
    }
}

impl Part for &str {
    fn part(self) -> Option<View> {
        Some(text(self))
    }
}

impl Part for &String {
    fn part(self) -> Option<View> {
        Some(text(self))
    }
}

impl Part for String {
    fn part(self) -> Option<View> {
        Some(text(&self))
    }
}

/// An element with its attributes and parts; what `el!` calls.
#[inline(never)]
pub(crate) fn element(
    tag: &'static str,
    names: &'static [&'static str],
    settings: &[&dyn Setting],
    parts: Box<[Option<View>]>,
) -> View {
    let mut made = VTag::new(tag);
    let values = settings.iter().map(|it| it.setting().map(AttributeOrProperty::Attribute));
    made.set_attributes(Attributes::Dynamic { keys: names, values: values.collect() });
    if let Some(inside) = made.children_mut() {
        *inside = together(parts).into();
    }
    View::from(VNode::from(made))
}

/// Makes an element: `el!("p", "class" = "why"; "Because: ", &reason)`.
macro_rules! el {
    ($tag:literal $(, $name:literal = $value:expr)* $(; $($part:expr),+ $(,)?)?) => {
        $crate::element::element(
            $tag,
            &[$($name),*],
            &[$(&$value as &dyn $crate::element::Setting),*],
            Box::new([$($($crate::element::Part::part($part)),+)?]),
        )
    };
}
pub(crate) use el;

/// Several, together in one place: `several!(name, value)`. Each keeps its own place within it.
macro_rules! several {
    ($($part:expr),+ $(,)?) => {
        $crate::element::together(Box::new([$($crate::element::Part::part($part)),+]))
    };
}
pub(crate) use several;

/// What `several!` calls.
#[inline(never)]
pub(crate) fn together(parts: Box<[Option<View>]>) -> View {
    let mut parts: Vec<_> =
        parts.into_iter().map(|it| it.map_or_else(Html::default, Html::from)).collect();
    match parts.pop() {
        Some(only) if parts.is_empty() => only.into(),
        last => {
            parts.extend(last);
            list(parts)
        }
    }
}

/// As many as there are, together in one place.
pub(crate) fn all(parts: impl IntoIterator<Item = View>) -> View {
    let mut all = Vec::new();
    // to collect would cost more bytes at each call
    for part in parts {
        add(&mut all, part);
    }
    list(all)
}

#[inline(never)]
fn add(all: &mut Vec<Html>, part: View) {
    all.push(part.into());
}

#[inline(never)]
fn list(parts: Vec<Html>) -> View {
    VNode::from(VList::with_children(parts, None)).into()
}

/// Words.
#[inline(never)]
pub(crate) fn text(words: &str) -> View {
    VNode::from(VText::new(shared(words))).into()
}

/// Words in which a number stays on a line with its unit: torn apart, `500 mV` is read as 500 of something else.
#[inline(never)]
pub(crate) fn whole(words: &str) -> String {
    let mut joined = String::with_capacity(words.len());
    for word in words.split_inclusive(' ') {
        let unit = word.trim_end_matches(|letter: char| !is_of_word(letter));
        let is_unit = unit.chars().count() <= 3
            && !unit.starts_with(|letter: char| letter.is_ascii_digit())
            && !matches!(unit, "to" | "and" | "or" | "of" | "by" | "is" | "in" | "at");
        let follows_digit = joined
            .strip_suffix(' ')
            .is_some_and(|before| before.ends_with(|it: char| it.is_ascii_digit()));
        if is_unit && follows_digit && joined.pop().is_some() {
            joined.push('\u{a0}');
        }
        joined.push_str(word);
    }
    joined
}

/// Whether it is a letter or a digit; of those that are no ASCII, what a unit or a name in Latin, Greek or Cyrillic has: the
/// page carries no table of the others.
fn is_of_word(letter: char) -> bool {
    letter.is_ascii_alphanumeric() || matches!(letter, '²' | '³' | 'µ' | 'À'..='ʯ' | 'Ͱ'..='ӿ')
}

/// Nothing, in the place of something.
#[inline(never)]
pub(crate) fn nothing() -> View {
    Html::default().into()
}

/// The same element, known by a name among its neighbours wherever it stands.
#[inline(never)]
pub(crate) fn keyed(name: &str, element: View) -> View {
    changed(element, |tag| tag.key = Some(Key::from(name)))
}

/// An element that was just made, and is therefore not shared yet, with something about it changed.
fn changed(mut element: View, change: impl FnOnce(&mut VTag)) -> View {
    if let VNode::VTag(tag) = &mut *element.0
        && let Some(tag) = Rc::get_mut(tag)
    {
        change(tag);
    }
    element
}

#[inline(never)]
fn shared(words: &str) -> AttrValue {
    AttrValue::from(Rc::<str>::from(words))
}

#[cfg(test)]
mod tests {
    use super::whole;

    #[track_caller]
    fn check(words: &str, expected: &str) {
        assert_eq!(whole(words), expected.replace('~', "\u{a0}"), "{words}");
    }

    #[test]
    fn a_number_and_its_unit_stay_together_and_a_range_may_break() {
        check("12.4 V (7.19 V to 14.6 V)", "12.4~V (7.19~V to 14.6~V)");
        check("0.1 to 1 s", "0.1 to 1~s");
        check("From 31 rpm to 147 rpm.", "From 31~rpm to 147~rpm.");
        check("up to 500 mV, 0.5 mm²; 30 to 40 %", "up to 500~mV, 0.5~mm²; 30 to 40~%");
    }

    #[test]
    fn other_words_part_where_they_will() {
        check("", "");
        check("channel 5 fires cylinder 3", "channel 5 fires cylinder 3");
        check("after 12", "after 12");
        check("Type 0 54 144 198.", "Type 0 54 144 198.");
        check("1 and 2 or 3", "1 and 2 or 3");
    }
}
