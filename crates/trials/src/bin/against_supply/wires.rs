//! Wires at random, heated by their current.

use quietpin_core::{
    quantity::{Measure as _, amperes, celsius},
    supply::laid::{Insulation, LaidWire, OVERLOADED, SHORTED},
    tables::wires,
};
use quietpin_trials::random::Random;

/// So many of each kind.
const CASES: usize = 50;

/// Sizes and counts that stand in the tables: what lies between is made up by the core.
const SIZES: [f64; 12] = [0.5, 0.75, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 4.5, 6.0, 8.5, 10.0];
const COUNTS: [u32; 6] = [1, 2, 3, 5, 9, 20];

fn name(insulation: Insulation) -> char {
    match insulation {
        Insulation::A => 'A',
        Insulation::B => 'B',
        Insulation::C => 'C',
        Insulation::D => 'D',
    }
}

/// What is asked of a wire, and what the core says of it; nothing where this wire does not show that.
fn asked(kind: &str, wire: &LaidWire, current: f64) -> Option<f64> {
    let current = amperes(current);
    let symbols = match kind {
        "overloaded" => OVERLOADED.symbols,
        "shorted" => SHORTED.symbols,
        _ => {
            let settled = wire.settles_at(current)?.base();
            return (settled < 250.0).then_some(settled);
        }
    };
    let found = wire.bears_for_step(current).filter(|it| it.symbols == symbols)?;
    // a short of five seconds is that of the standard, and not of the equation
    let number = wire.bears_for(current)?.base();
    (found.symbols != SHORTED.symbols || number < 4.999).then_some(number)
}

/// The cases, one a line, for the other side.
pub(crate) fn lines(seed: u64) -> String {
    let mut text = String::new();
    for (at, kind) in ["overloaded", "shorted", "settles"].into_iter().enumerate() {
        let made = (0..100 * CASES).filter_map(|index| {
            let mut random = Random::of(seed + at as u64, index);
            let insulation = random.one_of(&Insulation::ALL);
            let (size, bundled) = (random.one_of(&SIZES), random.one_of(&COUNTS));
            let air = random.even(-40.0, 120.0);
            let area = quietpin_core::quantity::Area::from_base(size * 1e-6);
            let current = wires::bears(area).base() * random.log_even(0.1, 60.0);
            let ambient = celsius(air);
            let wire = LaidWire { area, insulation, ambient, bundled };
            let ours = asked(kind, &wire, current).filter(|ours| *ours > 1e-4)?;
            let insulation = name(insulation);
            Some(format!("{kind} {size} {insulation} {air:e} {bundled} {current:e} {ours:e}\n"))
        });
        text.extend(made.take(CASES));
    }
    text
}
