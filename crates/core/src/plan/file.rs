//! The form of a plan in a file: fields that are blank are left out, and a number may stand for a text.

use super::{
    Plan, VERSION, former,
    left::{self, leaves},
    node::DocumentNode,
    version1,
};
use crate::schema::{Field, Part, Place};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error, ser::SerializeMap};

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
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("quietpin", &self.quietpin)?;
        for (name, text) in [("name", &self.name), ("notes", &self.notes)] {
            if !text.is_empty() {
                map.serialize_entry(name, text)?;
            }
        }
        for &part in Part::ALL {
            if self.is_blank(part) {
                continue;
            }
            if part.is_list() {
                let records: Vec<_> =
                    (0..self.count(part)).map(|at| Record { plan: self, part, at }).collect();
                map.serialize_entry(part.name(), &records)?;
            } else {
                map.serialize_entry(part.name(), &Record { plan: self, part, at: 0 })?;
            }
        }
        if !self.left.is_empty() {
            map.serialize_entry(left::MEMBER, &LeftTexts(&self.left))?;
        }
        map.end()
    }
}

/// What has no place, by its path: one that stands there twice is written twice, and read again so.
struct LeftTexts<'a>(&'a [left::LeftOver]);

impl Serialize for LeftTexts<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(path, text)| (path, text)))
    }
}

/// A record, without the fields that are blank.
struct Record<'a> {
    plan: &'a Plan,
    part: Part,
    at: usize,
}

impl Serialize for Record<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        for place in self.part.places() {
            let place = place.at(self.at);
            let Field { name, is_list, .. } = place.field();
            let cells: Vec<_> = (0..self.plan.cell_count(place))
                .map(|cell| self.plan.text(place.in_cell(cell)))
                .collect();
            match cells.as_slice() {
                [] => {}
                [text] if !is_list => map.serialize_entry(name, text)?,
                texts => map.serialize_entry(name, texts)?,
            }
        }
        map.end()
    }
}
