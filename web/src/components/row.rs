//! A card or a question in a row: what it is called, and how it stands. A tap leads to it.

use quietpin_core::report::{Answer, Tone};

use crate::{
    cards::Card,
    element::{View, el, whole},
    words,
};

/// A card in a list of cards.
pub(crate) fn row(card: &Card, is_here: bool) -> View {
    let worst = card.worst();
    let tone = worst.map(|it| it.verdict.tone);
    let says = worst.map(|it| whole(&it.verdict.message.text));
    el!("li"; row_of(&card.key, tone, &card.title, says, is_here))
}

/// A row that leads to an address.
pub(crate) fn row_of(
    address: &str,
    tone: Option<Tone>,
    title: &str,
    says: Option<String>,
    is_here: bool,
) -> View {
    el!("a", "class" = format!("row {}", tone.map_or("", words::tone_class)), "href" = format!("#{address}"),
        "aria-current" = is_here.then_some("page");
        tone.map(sign),
        el!("b"; title),
        says.map(|it| el!("span", "class" = "says"; it)),
    )
}

/// The sign of a verdict.
pub(crate) fn sign(tone: Tone) -> View {
    el!("span", "class" = "sign", "aria-hidden" = "true"; words::tone_sign(tone))
}

/// What an answer says in a row: one that is open, what it needs; one that is right, no more than that it is.
pub(crate) fn stands(answer: &Answer) -> String {
    match &answer.why {
        // what it needs stands in the verdict, or else in the sentence below it
        Some(why) if answer.verdict.message.text == "Not answered yet" => whole(&why.text),
        _ if answer.verdict.tone == Tone::Good => whole(&answer.verdict.message.text),
        _ => titled(answer),
    }
}

/// What an answer says, under its title where it has one.
pub(crate) fn titled(answer: &Answer) -> String {
    let verdict = whole(&answer.verdict.message.text);
    match &answer.title {
        Some(title) if title.text.ends_with('?') => format!("{} {verdict}", title.text),
        Some(title) => format!("{}: {verdict}", title.text),
        None => verdict,
    }
}
