//! What the engine's numbers come from: angles from its crank, a firing order from another numbering.

use crate::{
    engine::{
        Engine, Firing,
        geometry::turns,
        numbering::{CylinderPlace, Renumbered, Side},
    },
    message::Message,
    quantity::{CrankAngle, Measure, Value},
    read::written,
    report::{Row, Table},
    say,
    working::{Formula, Step, step},
};

const TOP: Formula = Formula {
    symbols: "θ_top = β + p + s",
    source: "kinematics of crank and rod, from memory: bank angle, pin and split pin of the first to fire",
};
const FROM_TOP: Formula = Formula {
    symbols: "θ = β + p + s − θ_top + t",
    source: "kinematics of crank and rod, from memory; t is the turn that the firing order gives it",
};
const NUMBER: Formula = Formula {
    symbols: "number_here = number at the place of number_there",
    source: "DIN 73021 and TGL 6864 as a trade journal has them; along the crank, and right bank first: common practice, no source",
};

/// Whether the crank leaves open in which turn a cylinder fires, one way being as even as the other.
pub(super) fn is_tie(engine: &Engine) -> bool {
    let tops = engine.tops();
    !tops.is_empty() && turns(engine.kind(), &engine.order(), tops).is_ok_and(|it| it.is_tie)
}

/// Each angle, from the crank; nothing where it wasn't found from there.
pub(super) fn steps(engine: &Engine) -> Vec<Step> {
    let of = |firing: &Firing| engine.tops().iter().find(|top| top.cylinder == firing.cylinder);
    let mut steps = Vec::new();
    let mut first = CrankAngle::default();
    for (firing, top) in engine.firings().iter().filter_map(|it| Some((it, of(it)?))) {
        let sum = top.bank + top.pin + top.split;
        let mut values =
            vec![("β", top.bank.show()), ("p", top.pin.show()), ("s", top.split.show())];
        if steps.is_empty() {
            first = sum;
            steps.push(step(&TOP, &values, sum));
        }
        values.push(("θ_top", first.show()));
        values.push(("t", (firing.angle - (sum - first)).show()));
        steps.push(step(&FROM_TOP, &values, firing.angle));
    }
    steps
}

/// The firing order there and here; nothing where it needed no translation.
pub(super) fn translated(engine: &Engine) -> Option<Message> {
    let both = engine.renumbered();
    let there = |here: u32| both.iter().find(|it| it.here == here).map(|it| it.there);
    let here = engine.order();
    let found = here.iter().map(|it| there(*it)).collect::<Option<Vec<_>>>()?;
    Some(say!(
        crate::car::engine::words::crank::ORDER_TRANSLATED,
        there = written(&found),
        here = written(&here)
    ))
}

/// Each cylinder by its place, with its two numbers; nothing where the firing order needed no translation.
pub(super) fn table(engine: &Engine) -> Option<Table> {
    let both = engine.renumbered();
    if both.is_empty() {
        return None;
    }
    let row = |it: &Renumbered| Row {
        cells: vec![Value::text(named(it.place).into_text()), it.there.into(), it.here.into()],
        tone: None,
    };
    let working = |it: &Renumbered| step(&NUMBER, &[("number_there", it.there.into())], it.here);
    Some(Table {
        caption: say!(crate::car::engine::words::crank::TABLE_PLACES),
        columns: vec![
            say!(crate::car::engine::words::crank::COL_PLACE),
            say!(crate::car::engine::words::crank::COL_THERE),
            say!(crate::car::engine::words::crank::COL_HERE),
        ],
        rows: both.iter().map(row).collect(),
        working: both.iter().map(working).collect(),
    })
}

fn named(place: CylinderPlace) -> Message {
    let at = place.from_front;
    match place.side {
        None => say!(crate::car::engine::words::crank::PLACE_LINE, place = at),
        Some(Side::Left) => say!(crate::car::engine::words::crank::PLACE_LEFT, place = at),
        Some(Side::Right) => say!(crate::car::engine::words::crank::PLACE_RIGHT, place = at),
    }
}
