//! A card: what is on the screen at a time. A question is one card or several; each has the fields that are asked together
//! and the answers that rest on them.

use std::rc::Rc;

use quietpin_core::{
    report::{Answer, Tone},
    schema::Place,
};

use crate::{components::Page, element::View};

/// One card.
pub(crate) struct Card {
    /// Its address: what its first answer is about, or the record whose fields it asks.
    pub(crate) key: String,
    /// What it is called.
    pub(crate) title: String,
    /// What it asks.
    pub(crate) blocks: Vec<Block>,
    /// What it answers.
    pub(crate) answers: Vec<Rc<Answer>>,
    /// What is warned of where it is asked, and need not be said again below.
    pub(crate) warned: Vec<String>,
    /// What is said in the place of a verdict as long as there is none.
    pub(crate) idle: &'static str,
    /// Whether it lists the cards of its question.
    pub(crate) is_overview: bool,
}

/// Some of what a card asks.
pub(crate) enum Block {
    /// Fields that have their home here: those asked first, then the others, the rare ones folded away.
    Form(Vec<Place>),
    /// The same, with these between the fields that are asked first and the others.
    Around(Vec<Place>, Vec<Block>),
    /// Fields that have their home on another card, and are typed here just as well.
    Also(Vec<Place>),
    /// A field for each entry of a list; `#` in the label stands for its number.
    Rows(Place, &'static str),
    /// What is folded away until it is wanted.
    Fold {
        /// Its class in the style sheet.
        class: &'static str,
        /// What it is called.
        summary: String,
        /// Opens it.
        is_wanted: bool,
        /// What it holds.
        blocks: Vec<Block>,
    },
    /// Whatever else is done here, about the record of this number.
    Made(fn(&Page, usize) -> View, usize),
}

impl Card {
    /// A card that asks nothing and answers nothing yet.
    pub(crate) fn new(key: impl Into<String>, title: impl Into<String>) -> Self {
        Self {
            key: key.into(),
            title: title.into(),
            blocks: Vec::new(),
            answers: Vec::new(),
            warned: Vec::new(),
            idle: "Not answered yet",
            is_overview: false,
        }
    }

    /// The same card, asking this too.
    pub(crate) fn asking(mut self, block: Block) -> Self {
        self.blocks.push(block);
        self
    }

    /// The same card, which answers this too.
    pub(crate) fn answering<'a>(
        mut self,
        answers: impl IntoIterator<Item = &'a Rc<Answer>>,
    ) -> Self {
        self.answers.extend(answers.into_iter().cloned());
        self
    }

    /// The same card, called by its answer's title where that has one.
    pub(crate) fn titled(mut self) -> Self {
        if let Some(title) = self.answers.first().and_then(|it| it.title.as_ref()) {
            self.title.clone_from(&title.text);
        }
        self
    }

    /// The answer that matters most.
    pub(crate) fn worst(&self) -> Option<&Rc<Answer>> {
        worst(&self.answers)
    }

    /// Whether this is the address of the card, or of one of its answers or fields; `place` is the field of that path.
    fn holds(&self, path: &str, place: Option<Place>) -> bool {
        self.key == path
            || self.answers.iter().any(|it| it.subject == path)
            || place.is_some_and(|place| self.blocks.iter().any(|it| it.holds(place)))
    }
}

impl Block {
    // places and not paths: a finding is looked for among the fields of forty loads
    fn holds(&self, place: Place) -> bool {
        match self {
            Self::Form(places) => places.contains(&place),
            Self::Around(places, middle) => {
                places.contains(&place) || middle.iter().any(|it| it.holds(place))
            }
            Self::Rows(list, _) => list.in_cell(0) == place.in_cell(0),
            Self::Fold { blocks, .. } => blocks.iter().any(|it| it.holds(place)),
            Self::Also(_) | Self::Made(..) => false,
        }
    }
}

/// The answer that matters most: a “no” first, then a doubt, then what is still open: what is right is right only where all is.
pub(crate) fn worst(answers: &[Rc<Answer>]) -> Option<&Rc<Answer>> {
    answers.iter().min_by_key(|it| weight(it.verdict.tone))
}

pub(crate) fn weight(tone: Tone) -> u8 {
    match tone {
        Tone::Bad => 0,
        Tone::Doubtful => 1,
        Tone::Open => 2,
        Tone::Good => 3,
    }
}

/// The card that an address leads to, by the numbers of question and card: its own, or that of the nearest part above it
/// (`loads.0.kind`, `loads.0`).
pub(crate) fn place_of(questions: &[(&str, Vec<Card>)], path: &str) -> Option<(usize, usize)> {
    let mut rest = path;
    loop {
        let find = |is_it: &dyn Fn(&Card) -> bool| {
            let mut each = questions.iter().enumerate();
            each.find_map(|(at, (_, cards))| Some((at, cards.iter().position(is_it)?)))
        };
        let place = Place::at_path(rest);
        // of a relay without a card of its own, that of its coil
        let coil = format!("{rest}.coil");
        let found =
            find(&|card| card.holds(rest, place)).or_else(|| find(&|card| card.key == coil));
        if found.is_some() {
            return found;
        }
        // a load that is gone leads to the others
        let id = if rest == "loads" { "outputs" } else { rest };
        if let Some(at) = questions.iter().position(|it| it.0 == id) {
            return Some((at, 0));
        }
        rest = rest.rsplit_once('.')?.0;
    }
}
