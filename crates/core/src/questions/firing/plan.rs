//! What ignition and injection share as planned: numbering, order, counts, the picture.

use crate::{
    channels::{Habit, Layout, PlugPosition, Slot, Target},
    engine::{Engine, EngineKind, Firing},
    message::Message,
    quantity::{Measure, Value},
    questions::firing::words,
    read::{Entry, written},
    report::{
        Figure, Row, Table,
        picture::{Cycle, CycleCylinder, CycleEvent, Outcome, Picture},
    },
    say,
    working::{Formula, Step, step},
};

const ORDER: Formula = Formula {
    symbols: "order = channel of the 1st to fire, of the 2nd, …",
    source: "definition: the controller fires its channels in this order",
};
const SPARE: Formula = Formula { symbols: "spare = there − N", source: "subtraction" };
const ACTS: Formula =
    Formula { symbols: "t = θ", source: "a channel fires at its cylinder's firing TDC" };
const ACTS_AGAIN: Formula =
    Formula { symbols: "t = θ + 360°", source: "fired every turn: once more a turn on" };

/// Both ways of numbering, side by side, with the order to enter for each.
pub(super) struct BothNumberings<'a> {
    pub(super) by_order: &'a Layout,
    /// None where the towers of a distributor leave no choice.
    pub(super) by_cylinder: Option<&'a Layout>,
    pub(super) used: Entry<Habit>,
}

impl BothNumberings<'_> {
    /// The layout that this plan uses.
    pub(super) fn layout(&self) -> &Layout {
        match (self.used.value(), self.by_cylinder) {
            (Some(Habit::ByCylinder), Some(layout)) => layout,
            _ => self.by_order,
        }
    }

    /// The layout of the other habit, and that habit.
    pub(super) fn other(&self) -> Option<(&Layout, Habit)> {
        match (self.used.value(), self.by_cylinder) {
            (Some(Habit::ByCylinder), Some(_)) => Some((self.by_order, Habit::ByOrder)),
            (_, Some(layout)) => Some((layout, Habit::ByCylinder)),
            (_, None) => None,
        }
    }

    pub(super) fn table(&self, engine: &Engine) -> Table {
        let both = self.by_cylinder.is_some();
        let by_cylinder = matches!(self.used.value(), Some(Habit::ByCylinder));
        let cylinder = match engine.kind() {
            EngineKind::Rotary => say!(words::COL_PLUG),
            _ => say!(words::COL_CYLINDER),
        };
        let mut columns = vec![cylinder, say!(words::COL_ACTS)];
        columns.push(match (both, by_cylinder) {
            (false, _) => say!(words::COL_TOWER),
            (true, false) => say!(words::COL_BY_ORDER_USED),
            (true, true) => say!(words::COL_BY_ORDER),
        });
        if both {
            columns.push(if by_cylinder {
                say!(words::COL_BY_CYLINDER_USED)
            } else {
                say!(words::COL_BY_CYLINDER)
            });
        }
        let mut rows: Vec<Row> = self.by_order.slots().iter().map(|slot| self.row(slot)).collect();
        if both {
            rows.push(self.order_row());
        }
        let caption = if both { say!(words::TABLE_HABITS) } else { say!(words::TABLE_TOWERS) };
        Table { caption, columns, rows, working: acts(engine, self.by_order) }
    }

    fn row(&self, slot: &Slot) -> Row {
        let mut cells = vec![
            Value::text(joined(&slot.targets)),
            Value::text(times(slot)),
            Value::from(slot.channel),
        ];
        let other = self.by_cylinder.and_then(|layout| layout.channel_of(*slot.targets.first()?));
        cells.extend(other.map(Value::from));
        Row { cells, tone: None }
    }

    fn order_row(&self) -> Row {
        let mut cells = vec![Value::text(say!(words::ORDER_TO_ENTER).into_text()), Value::text("")];
        cells.push(Value::text(order_of(self.by_order)));
        cells.extend(self.by_cylinder.map(|layout| Value::text(order_of(layout))));
        Row { cells, tone: None }
    }
}

/// `1 + 6`
pub(super) fn joined(targets: &[Target]) -> String {
    let texts: Vec<String> = targets.iter().map(Target::to_string).collect();
    texts.join(" + ")
}

fn times(slot: &Slot) -> String {
    let texts: Vec<String> = slot.times.iter().map(|time| time.show().into_shown()).collect();
    texts.join(", ")
}

/// The order of the channels as it is entered: `1-5-3-6-2-4`, or one for each kind of plug.
pub(super) fn order_of(layout: &Layout) -> String {
    let only = layout.order(PlugPosition::Only);
    if !only.is_empty() {
        return written(&only);
    }
    let (leading, trailing) =
        (layout.order(PlugPosition::Leading), layout.order(PlugPosition::Trailing));
    say!(words::ORDER_ROTARY, leading = written(&leading), trailing = written(&trailing))
        .into_text()
}

fn acts(engine: &Engine, layout: &Layout) -> Vec<Step> {
    let one = |slot: &Slot| {
        let own = slot.targets.first().and_then(|target| engine.angle_of(target.cylinder));
        let own = own.unwrap_or_default().show();
        let formulas = [&ACTS, &ACTS_AGAIN];
        let steps = slot.times.iter().zip(formulas);
        steps.map(|(time, formula)| step(formula, &[("θ", own.clone())], *time)).collect::<Vec<_>>()
    };
    let mut steps: Vec<Step> = layout.slots().iter().flat_map(one).collect();
    // leading and trailing plugs of a rotor act alike here
    steps.dedup();
    steps.push(order_step(layout));
    steps
}

fn order_step(layout: &Layout) -> Step {
    step(&ORDER, &[], Value::text(order_of(layout)))
}

/// The channels needed, those there are, and the order to enter.
pub(super) fn figures(
    layout: &Layout,
    needed: &[Step],
    there: Option<u32>,
    has_order: bool,
) -> Vec<Figure> {
    let needs = layout.channels();
    let mut figures = vec![Figure::plain(say!(words::FIGURE_NEEDED), needs, needed.to_vec())];
    if let Some(there) = there.filter(|&there| there >= needs) {
        let values = [("there", there.into()), ("N", needs.into())];
        let spare = step(&SPARE, &values, there - needs);
        figures.push(Figure::plain(say!(words::FIGURE_SPARE), there - needs, vec![spare]));
    }
    if has_order {
        let order = order_of(layout);
        let label = say!(words::ORDER_TO_ENTER);
        figures.push(Figure::plain(label, order, vec![order_step(layout)]));
    }
    figures
}

/// The cycle with every planned spark.
pub(super) fn picture(engine: &Engine, layout: &Layout) -> Picture {
    let mut events = Vec::new();
    for slot in layout.slots() {
        for target in &slot.targets {
            let own = engine.angle_of(target.cylinder).unwrap_or_default();
            events.extend(slot.times.iter().map(|at| CycleEvent {
                angle_deg: at.degrees(),
                channel: slot.channel,
                cylinder: target.cylinder,
                outcome: if at.is_near(own) { Outcome::Fires } else { Outcome::Wasted },
            }));
        }
    }
    cycle(engine, say!(words::PICTURE_PLANNED, order = written(&engine.order())), events)
}

/// The cycle with these events.
pub(super) fn cycle(engine: &Engine, caption: Message, mut events: Vec<CycleEvent>) -> Picture {
    crate::sorted::by(&mut events, |one, other| {
        one.angle_deg.total_cmp(&other.angle_deg).then(one.channel.cmp(&other.channel))
    });
    let cylinder = |firing: &Firing| CycleCylinder {
        cylinder: firing.cylinder,
        angle_deg: firing.angle.degrees(),
    };
    Picture::Cycle(Cycle {
        caption,
        cycle_deg: engine.cycle().degrees(),
        cylinders: engine.firings().iter().map(cylinder).collect(),
        events,
    })
}
