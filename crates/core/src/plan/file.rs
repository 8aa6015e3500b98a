//! The form of a plan in a file: fields that are blank are left out, and a number may stand for a text.

use super::{
    Plan, VERSION, former,
    left::{self, leaves},
    node::DocumentNode,
    version1,
};
use crate::schema::{Field, Part, Place};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};

impl<'de> Deserialize<'de> for Plan {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        from_node(DocumentNode::deserialize(deserializer)?).map_err(D::Error::custom)
    }
}

/// The plan in a JSON document; what has no place in it is kept as left over.
pub(super) fn from_node(document: DocumentNode) -> Result<Plan, String> {
    let DocumentNode::Object(document) = document else {
        return Err("it is not an object in braces".into());
    };
    let mut plan = Plan::default();
    let version = document.iter().find(|(key, _)| key == "quietpin").and_then(|(_, it)| it.whole());
    plan.quietpin = version.and_then(|it| u32::try_from(it).ok()).unwrap_or_default();
    let document = if plan.quietpin == 1 {
        plan.quietpin = VERSION;
        version1::converted(document, &mut plan.left)
    } else {
        document
    };
    for (key, value) in document {
        match (key.as_str(), value) {
            ("quietpin", _) => {}
            ("name", DocumentNode::Text(text)) => plan.name = text,
            ("notes", DocumentNode::Text(text)) => plan.notes = text,
            (left::MEMBER, DocumentNode::Object(members)) => {
                for (path, value) in members {
                    leaves(value, &path, &mut plan.left);
                }
            }
            (_, value) => match (Part::named(&key), value) {
                (Some(part), DocumentNode::List(records)) if part.is_list() => {
                    records_of(&mut plan, part, records);
                }
                (Some(part), DocumentNode::Object(object)) if !part.is_list() => {
                    fill(&mut plan, Place::first_of(part, 0), object, &key);
                }
                (_, value) => leaves(value, &key, &mut plan.left),
            },
        }
    }
    Ok(plan)
}

fn records_of(plan: &mut Plan, part: Part, records: Vec<DocumentNode>) {
    plan.set_count(part, records.len());
    for (at, record) in (0..).zip(records) {
        let place = Place::first_of(part, at);
        let path = part.record(place.record());
        match record {
            DocumentNode::Object(object) => fill(plan, place, object, &path),
            other => leaves(other, &path, &mut plan.left),
        }
    }
}

fn fill(plan: &mut Plan, record: Place, object: Vec<(String, DocumentNode)>, path: &str) {
    for (key, value) in object {
        let at = format!("{path}.{key}");
        let name = former::name_today(path, &key);
        match (record.beside(name), value) {
            (Some(place), DocumentNode::List(cells)) if place.field().is_list => {
                for (cell, value) in cells.into_iter().enumerate() {
                    match value {
                        DocumentNode::Text(text) => plan.keep(place.in_cell(cell), text),
                        other => leaves(other, &format!("{at}.{cell}"), &mut plan.left),
                    }
                }
            }
            (Some(place), DocumentNode::Text(text)) if !place.field().is_list => {
                let text = former::text_today(path, name, text);
                put(plan, place, &at, text);
            }
            (_, value) => leaves(value, &at, &mut plan.left),
        }
    }
}

/// Puts a text into its place, unless another one stands there: of two that differ neither may be lost unseen.
fn put(plan: &mut Plan, place: Place, at: &str, text: String) {
    let (there, new) = (plan.text(place).trim(), text.trim());
    if there.is_empty() {
        plan.keep(place, text);
    } else if !new.is_empty() && new != there {
        plan.left.push((at.to_owned(), text));
    }
}

impl Serialize for Plan {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        to_node(self, self.quietpin).serialize(serializer)
    }
}

/// The JSON document of a plan, of this version.
pub(super) fn to_node(plan: &Plan, version: u32) -> DocumentNode {
    let text = |text: &String| DocumentNode::Text(text.clone());
    let mut members = vec![("quietpin".to_owned(), DocumentNode::Number(version))];
    for (name, own) in [("name", &plan.name), ("notes", &plan.notes)] {
        if !own.is_empty() {
            members.push((name.to_owned(), text(own)));
        }
    }
    for &part in Part::ALL {
        if plan.is_blank(part) {
            continue;
        }
        let node = if part.is_list() {
            let records = (0..plan.count(part)).map(|at| record(plan, part, at));
            DocumentNode::List(records.collect())
        } else {
            record(plan, part, 0)
        };
        members.push((part.name().to_owned(), node));
    }
    if !plan.left.is_empty() {
        // what stands there twice is written twice, and read again so
        let left = plan.left.iter().map(|(path, own)| (path.clone(), text(own)));
        members.push((left::MEMBER.to_owned(), DocumentNode::Object(left.collect())));
    }
    DocumentNode::Object(members)
}

/// A record, without the fields that are blank.
fn record(plan: &Plan, part: Part, at: usize) -> DocumentNode {
    let mut members = Vec::new();
    for place in part.places() {
        let place = place.at(at);
        let Field { name, is_list, .. } = place.field();
        let count = plan.cell_count(place);
        let mut cells =
            (0..count).map(|cell| DocumentNode::Text(plan.text(place.in_cell(cell)).to_owned()));
        let node = match cells.next() {
            None => continue,
            Some(only) if !is_list && count == 1 => only,
            Some(first) => DocumentNode::List([first].into_iter().chain(cells).collect()),
        };
        members.push(((*name).to_owned(), node));
    }
    DocumentNode::Object(members)
}
