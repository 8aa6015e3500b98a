//! A row a cylinder over the angles of the cycle: what both pictures of a cycle share.

use quietpin_core::report::{CycleCylinder, Outcome};

use super::{at, disc, horizontal, vertical, view_box, whole};
use crate::element::{View, all, el};

const WIDTH: f64 = 340.0;
const LEFT: f64 = 30.0;
const RIGHT: f64 = 18.0;
const TOP: f64 = 22.0;

/// The rows of a picture.
pub(super) struct Rows<'a> {
    /// What the picture shows, for those who can't see it.
    pub(super) caption: &'a str,
    pub(super) cycle_deg: f64,
    pub(super) cylinders: &'a [CycleCylinder],
    /// Height of a row.
    pub(super) row: f64,
    /// How far the tick at a cylinder's own firing place reaches up and down.
    pub(super) tick: f64,
}

impl Rows<'_> {
    /// The picture: in each row what `marks` draws of a cylinder about a line at a height; below it what they mean.
    pub(super) fn view(&self, marks: impl Fn(&CycleCylinder, f64) -> View, key: View) -> View {
        let height = TOP + self.row * count(self.cylinders.len()) + 8.0;
        let row = |(number, it): (usize, &CycleCylinder)| {
            let y = TOP + self.row * (count(number) + 0.5);
            let own = self.x_of(it.angle_deg);
            el!("g";
                el!("text", "class" = "name", "x" = "4", "y" = y + 5.0; it.cylinder.to_string()),
                horizontal("row", LEFT, WIDTH - RIGHT, y),
                vertical("own", own, y - self.tick, y + self.tick),
                marks(it, y),
            )
        };
        let caption = self.caption;
        el!("figure", "class" = "picture";
            el!("svg", "viewBox" = view_box(WIDTH, height), "role" = "img", "aria-label" = caption.to_owned();
                self.grid(height),
                all(self.cylinders.iter().enumerate().map(row)),
            ),
            el!("figcaption"; caption, el!("ul", "class" = "key"; key)),
        )
    }

    /// The place of an angle.
    pub(super) fn x_of(&self, angle_deg: f64) -> f64 {
        LEFT + (WIDTH - LEFT - RIGHT) * angle_deg / self.cycle_deg
    }

    fn grid(&self, height: f64) -> View {
        let line = |step: f64| {
            let angle = self.cycle_deg / 4.0 * step;
            let x = self.x_of(angle);
            el!("g";
                vertical("grid", x, TOP - 6.0, height - 6.0),
                el!("text", "class" = "scale", "x" = x, "y" = "11", "text-anchor" = "middle";
                    format!("{}°", whole(angle))),
            )
        };
        all([0.0, 1.0, 2.0, 3.0, 4.0].map(line))
    }
}

#[expect(clippy::cast_precision_loss, reason = "at most some tens of cylinders")]
fn count(number: usize) -> f64 {
    number as f64
}

/// The mark of a spark, by what comes of it.
pub(super) fn spark(outcome: Outcome, x: f64, y: f64) -> View {
    match outcome {
        Outcome::Fires => disc("fires", x, y, "6"),
        Outcome::Wasted => disc("wasted", x, y, "5"),
        Outcome::Misplaced => {
            let (l, r, t, b) = (at(x - 6.0), at(x + 6.0), at(y - 6.0), at(y + 6.0));
            el!("path", "class" = "misplaced", "d" = format!("M{l} {t} {r} {b}M{r} {t} {l} {b}"))
        }
    }
}

/// What a mark means.
pub(super) fn entry(mark: View, meaning: &str) -> View {
    el!("li"; el!("svg", "viewBox" = "0 0 16 16", "aria-hidden" = "true"; mark), meaning)
}

/// What the mark of a spark means, where there is one.
pub(super) fn spark_entry(is_there: bool, outcome: Outcome, meaning: &str) -> Option<View> {
    is_there.then(|| entry(spark(outcome, 8.0, 8.0), meaning))
}
