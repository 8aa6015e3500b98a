//! The form of a plan in a file: fields that are blank are left out, and a number may stand for a text.

use super::{Plan, former, node::DocumentNode};
use crate::schema::{Field, Part, Place};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error, ser::SerializeMap};

impl<'de> Deserialize<'de> for Plan {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        from_node(DocumentNode::deserialize(deserializer)?).map_err(D::Error::custom)
    }
}

/// The plan in a JSON document, or what has no place in it.
pub(super) fn from_node(document: DocumentNode) -> Result<Plan, String> {
    let DocumentNode::Object(document) = document else {
        return Err("it is not an object in braces".into());
    };
    let mut plan = Plan::default();
    for (key, value) in document {
        match key.as_str() {
            "quietpin" => {
                plan.quietpin =
                    value.whole().and_then(|it| u32::try_from(it).ok()).unwrap_or_default();
            }
            "name" => plan.name = text(value, &key)?,
            "notes" => plan.notes = text(value, &key)?,
            _ => match Part::named(&key) {
                Some(part) if part.is_list() => records(&mut plan, part, value)?,
                Some(part) => fill(&mut plan, Place::first_of(part, 0), value, &key)?,
                None => return Err(format!("a plan has no part named “{key}”")),
            },
        }
    }
    Ok(plan)
}

fn records(plan: &mut Plan, part: Part, value: DocumentNode) -> Result<(), String> {
    let records = list(value, part.name())?;
    plan.set_count(part, records.len());
    for (at, record) in (0..).zip(records) {
        let place = Place::first_of(part, at);
        fill(plan, place, record, &part.record(place.record()))?;
    }
    Ok(())
}

fn fill(plan: &mut Plan, record: Place, value: DocumentNode, path: &str) -> Result<(), String> {
    let DocumentNode::Object(object) = value else {
        return Err(format!("“{path}” is not an object in braces"));
    };
    for (key, value) in object {
        let at = format!("{path}.{key}");
        let name = former::name_today(path, &key);
        let Some(place) = record.beside(name) else {
            let names: Vec<_> = record.part().fields().iter().map(|field| field.name).collect();
            return Err(format!("there is no “{at}”; there are: {}", names.join(", ")));
        };
        if place.field().is_list {
            for (cell, value) in list(value, &at)?.into_iter().enumerate() {
                plan.keep(place.in_cell(cell), text(value, &at)?);
            }
        } else {
            let text = former::text_today(path, name, text(value, &at)?);
            put(plan, place, text).map_err(|texts| twice(path, name, &texts))?;
        }
    }
    Ok(())
}

/// Puts a text into its place, unless another one stands there: of two that differ neither may be lost unseen.
fn put(plan: &mut Plan, place: Place, text: String) -> Result<(), String> {
    let (there, new) = (plan.text(place).trim(), text.trim());
    if there.is_empty() {
        plan.keep(place, text);
    } else if !new.is_empty() && new != there {
        return Err(format!("as “{there}” and as “{new}”"));
    }
    Ok(())
}

fn twice(path: &str, name: &str, texts: &str) -> String {
    let also = former::former_name(path, name)
        .map(|it| format!("; an earlier file calls it “{path}.{it}”"))
        .unwrap_or_default();
    format!("“{path}.{name}” stands there twice, {texts}{also}")
}

fn list(value: DocumentNode, path: &str) -> Result<Vec<DocumentNode>, String> {
    match value {
        DocumentNode::List(values) => Ok(values),
        _ => Err(format!("“{path}” is not a list in brackets")),
    }
}

fn text(value: DocumentNode, path: &str) -> Result<String, String> {
    match value {
        DocumentNode::Text(text) => Ok(text),
        DocumentNode::Truth | DocumentNode::List(_) | DocumentNode::Object(_) => {
            Err(format!("“{path}” is neither a text in quotes nor a number"))
        }
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
        map.end()
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
