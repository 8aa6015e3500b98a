//! A row for each wire of the car.

mod branches;
mod channels;
mod controller;
mod feeds;
mod loads;
mod sensors;

use super::planned::PlannedWire;
use crate::{
    car::Car,
    channels::words_of,
    loom::{Duty, LoomWire, Stock},
};

/// All of them: from each channel, from each output, from each sensor; then the feeds.
pub(super) fn wires(car: &Car<'_>) -> Vec<PlannedWire> {
    let mut wires = channels::wires(car);
    wires.extend(loads::wires(car));
    wires.extend(sensors::wires(car));
    wires.extend(controller::wires(car));
    wires.extend(feeds::wires(car));
    number(&mut wires);
    wires
}

/// The letters and digits of a name, by which a wire is ticked off.
fn slug(parts: &[&str]) -> String {
    // what parts the words of a list is in none of them
    let is_part = |it: &char| words_of(it.encode_utf8(&mut [0; 4])).len() == 1;
    let is_part = |it: &char| is_part(it) && (it.is_ascii_alphanumeric() || !it.is_ascii());
    parts.concat().chars().filter(is_part).map(|it| it.to_ascii_lowercase()).collect()
}

/// What is printed on both labels of a wire: as its ends are called.
fn label(from: &str, to: &str) -> String {
    [from, to].join(" - ")
}

/// A wire of which no more is known than its ends.
fn bare(id: String, label: String, [from, to]: [String; 2], duty: Duty, stock: Stock) -> LoomWire {
    LoomWire {
        id,
        label,
        from,
        to,
        duty,
        stock,
        size: None,
        length: None,
        together: None,
        fuse: None,
        works: Vec::new(),
    }
}

/// One that is called by its ends.
fn between(id: String, [from, to]: [String; 2], duty: Duty, stock: Stock) -> LoomWire {
    bare(id, label(&from, &to), [from, to], duty, stock)
}

/// Two that would go by one name get a number each.
fn number(wires: &mut [PlannedWire]) {
    let mut seen: Vec<String> = Vec::new();
    for planned in wires {
        let id = &mut planned.wire.id;
        let plain = id.clone();
        let mut next = 2;
        while seen.contains(id) {
            *id = [plain.as_str(), ".", &next.to_string()].concat();
            next += 1;
        }
        seen.push(id.clone());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_becomes_a_word() {
        assert_eq!(slug(&["D3", " / Fan 2"]), "d3fan2");
        assert_eq!(words_of(&slug(&["a-b; c", "→ é"])).len(), 1);
    }
}
