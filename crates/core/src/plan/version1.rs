//! From a file of version 1, in which each question had the facts that it needed, to the one car of today.
//!
//! What two questions of such a file told differently can't be decided here: the first stands, the other is kept as left
//! over, and told.

use super::{former, left::LeftOver, node::DocumentNode};

/// A field that stands elsewhere today.
struct Moved {
    from: (&'static str, &'static str),
    to: (&'static str, &'static str),
}

const fn moved(
    part: &'static str,
    field: &'static str,
    to_part: &'static str,
    to_field: &'static str,
) -> Moved {
    Moved { from: (part, field), to: (to_part, to_field) }
}

/// In the order in which they are moved: where two come to the same place, the first stands.
const MOVED: &[Moved] = &[
    moved("conditions", "cranking", "battery", "cold_cranking"),
    moved("conditions", "resting", "battery", "resting"),
    moved("conditions", "charging", "battery", "charging"),
    moved("conditions", "cold", "temperatures", "cold"),
    moved("conditions", "hot", "temperatures", "hot"),
    moved("conditions", "dead_supply", "controller", "supply_off"),
    moved("conditions", "dead_feed", "switched_feeds", "off_resistance"),
    moved("trigger", "offset", "controller", "offset"),
    moved("light", "offset", "controller", "offset"),
    moved("light", "advance", "controller", "locked_advance"),
    moved("trigger", "advance", "controller", "locked_advance"),
    moved("strip", "dwell", "controller", "dwell"),
    moved("cranking", "dwell", "controller", "cranking_dwell"),
    moved("cranking", "teeth", "wheels", "crank_teeth"),
    moved("cranking", "missing", "wheels", "missing"),
    moved("cranking", "gap_angle", "wheels", "gap_angle"),
    moved("trigger", "cam_teeth", "wheels", "cam_teeth"),
    moved("cranking", "relay_on_at", COILS, "relay_on_at"),
    moved("cranking", "relay_off_below", COILS, "relay_off_below"),
    moved("cranking", "pull_in_voltage", COILS, "pull_in"),
    moved("cranking", "pull_in_time", COILS, "pull_in_time"),
    moved("cranking", "drop_out_time", COILS, "drop_out_time"),
    moved("coils", "relays", COILS, "alike"),
    moved("coils", "relay", COILS, "rating"),
    moved("coils", "fuse", COILS, "fuse"),
    moved("coils", "lead_length", COILS, "lead_length"),
    moved("coils", "lead_size", COILS, "lead_size"),
    moved("injector_feed", "fuse", INJECTORS, "fuse"),
    moved("injector_feed", "relay", INJECTORS, "rating"),
];

/// Where the coils' relay is put together: no part of a plan.
const COILS: &str = "(the coils' relay)";

/// The same for the injectors' relay.
const INJECTORS: &str = "(the injectors' relay)";

/// A field of a relay of the list that is called otherwise today.
const OF_RELAYS: (&str, &str) = ("pull_in_voltage", "pull_in");

/// What is in braces.
type Members = Vec<(String, DocumentNode)>;

/// The members of a document of version 1 as a document of today has them.
pub(super) fn converted(members: Members, left: &mut Vec<LeftOver>) -> Members {
    let mut document = Document { members, left };
    for it in MOVED {
        document.shift(it);
    }
    let mut relays = document.relays();
    let feeds_coils = |it: &Members| text_of(it, "purpose").eq_ignore_ascii_case("coils");
    let is_second = relays.iter().any(feeds_coils);
    let mut coils = document.take(COILS).unwrap_or_default();
    if is_second || !coils.is_empty() {
        name(&mut coils, "Coil relay", "coils");
        relays.insert(0, coils);
    }
    if let Some(mut injectors) = document.take(INJECTORS) {
        name(&mut injectors, "Injector relay", "injectors");
        relays.push(injectors);
    }
    document.coils_of_relays(&mut relays);
    if !relays.is_empty() {
        let list = relays.into_iter().map(DocumentNode::Object).collect();
        document.members.push(("relays".into(), DocumentNode::List(list)));
    }
    document.members
}

struct Document<'a> {
    members: Members,
    left: &'a mut Vec<LeftOver>,
}

impl Document<'_> {
    /// Takes a part out, where it is an object.
    fn take(&mut self, part: &str) -> Option<Members> {
        let at = self
            .members
            .iter()
            .position(|(key, value)| key == part && matches!(value, DocumentNode::Object(_)))?;
        match self.members.remove(at).1 {
            DocumentNode::Object(object) => Some(object),
            _ => None,
        }
    }

    /// Moves a field, whatever name it has in the file.
    fn shift(&mut self, it: &Moved) {
        let (part, field) = it.from;
        loop {
            let object = self.members.iter_mut().find_map(|(key, value)| match value {
                DocumentNode::Object(object) if key == part => Some(object),
                _ => None,
            });
            let Some(object) = object else { return };
            let is_it = |(key, _): &(String, DocumentNode)| former::name_today(part, key) == field;
            let Some(at) = object.iter().position(is_it) else { return };
            let (key, value) = object.remove(at);
            if value.is_blank() {
                continue;
            }
            let from = format!("{part}.{key}");
            let refused = self.put(it.to, value);
            self.keep(&from, refused);
        }
    }

    /// Puts a value into a part, which is begun where there is none; hands it back where another stands there.
    fn put(&mut self, (part, field): (&str, &str), value: DocumentNode) -> Option<DocumentNode> {
        let object = self.members.iter_mut().find_map(|(key, there)| match there {
            DocumentNode::Object(object) if key == part => Some(object),
            _ => None,
        });
        if let Some(object) = object {
            return put(object, field, value);
        }
        let object = vec![(field.to_owned(), value)];
        self.members.push((part.to_owned(), DocumentNode::Object(object)));
        None
    }

    fn keep(&mut self, path: &str, refused: Option<DocumentNode>) {
        if let Some(node) = refused {
            super::left::leaves(node, path, self.left);
        }
    }

    /// Takes out the list of relays that were switched at a speed, with the names of today.
    fn relays(&mut self) -> Vec<Members> {
        let is_list = |(key, value): &(String, DocumentNode)| {
            key == "relays" && matches!(value, DocumentNode::List(_))
        };
        let Some(at) = self.members.iter().position(is_list) else { return Vec::new() };
        let DocumentNode::List(records) = self.members.remove(at).1 else { return Vec::new() };
        let mut relays = Vec::new();
        for (number, record) in records.into_iter().enumerate() {
            let path = format!("relays.{number}");
            let DocumentNode::Object(object) = record else {
                self.keep(&path, Some(record));
                continue;
            };
            let mut relay = Members::new();
            for (key, value) in object {
                let today = former::name_today(&path, &key);
                let today = if today == OF_RELAYS.0 { OF_RELAYS.1 } else { today };
                let refused = put(&mut relay, today, value);
                self.keep(&format!("{path}.{key}"), refused);
            }
            let speeds = ["relay_on_at", "relay_off_below"];
            if speeds.iter().all(|field| text_of(&relay, field).is_empty()) {
                // it stood among those that are switched at a speed
                put(&mut relay, "switched_by", DocumentNode::Text("speed".into()));
            }
            relays.push(relay);
        }
        relays
    }

    /// Moves the loads that are relays' coils to the relays: to the one of the same name, or to one of their own.
    fn coils_of_relays(&mut self, relays: &mut Vec<Members>) {
        let of_speed = relays.len();
        let mut loads = self.members.iter_mut().filter(|(key, _)| key == "loads");
        let Some((_, DocumentNode::List(loads))) = loads.next() else { return };
        let mut kept = Vec::new();
        let mut moved = Vec::new();
        for (number, load) in std::mem::take(loads).into_iter().enumerate() {
            match load {
                DocumentNode::Object(load)
                    if text_of(&load, "kind").eq_ignore_ascii_case("relay-coil") =>
                {
                    moved.push((number, load));
                }
                other => kept.push(other),
            }
        }
        *loads = kept;
        for (number, load) in moved {
            let named = text_of(&load, "name").to_owned();
            let is_it = |it: &Members| {
                !named.is_empty() && text_of(it, "name").eq_ignore_ascii_case(&named)
            };
            let at = relays.iter().take(of_speed).position(is_it).unwrap_or_else(|| {
                relays.push(Members::new());
                relays.len() - 1
            });
            let Some(relay) = relays.get_mut(at) else { continue };
            let is_new = relay.is_empty();
            for (key, value) in load {
                if key == "kind" || (key == "name" && !is_new) {
                    continue;
                }
                let refused = put(relay, &key, value);
                if let Some(node) = refused {
                    super::left::leaves(node, &format!("loads.{number}.{key}"), self.left);
                }
            }
        }
    }
}

/// Puts a value into its place; hands it back where another stands there.
fn put(object: &mut Members, field: &str, value: DocumentNode) -> Option<DocumentNode> {
    let Some((_, there)) = object.iter_mut().find(|(key, _)| key == field) else {
        object.push((field.to_owned(), value));
        return None;
    };
    if there.is_blank() {
        *there = value;
        return None;
    }
    let is_same = there.text().is_some_and(|text| Some(text) == value.text());
    (!is_same && !value.is_blank()).then_some(value)
}

fn text_of<'a>(object: &'a Members, field: &str) -> &'a str {
    let found = object.iter().find(|(key, _)| key == field);
    found.and_then(|(_, value)| value.text()).unwrap_or_default()
}

fn name(relay: &mut Members, name: &str, purpose: &str) {
    for (field, text) in [("purpose", purpose), ("name", name)] {
        relay.insert(0, (field.to_owned(), DocumentNode::Text(text.to_owned())));
    }
}
