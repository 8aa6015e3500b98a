//! The form of a plan in a file: fields that are blank are left out, and a number may stand for a text.

use super::{
    Plan, former,
    node::Node,
    record::{Record, Slot, View},
};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error, ser::SerializeMap};

impl<'de> Deserialize<'de> for Plan {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        from_node(Node::deserialize(deserializer)?).map_err(D::Error::custom)
    }
}

/// The plan in a JSON document, or what has no place in it.
pub(super) fn from_node(document: Node) -> Result<Plan, String> {
    let Node::Object(document) = document else {
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
            "conditions" => fill(plan.conditions.slots(), value, &key)?,
            "engine" => fill(plan.engine.slots(), value, &key)?,
            "channels" => fill(plan.channels.slots(), value, &key)?,
            "light" => fill(plan.light.slots(), value, &key)?,
            "strip" => fill(plan.strip.slots(), value, &key)?,
            "injectors" => fill(plan.injectors.slots(), value, &key)?,
            "second_injectors" => fill(plan.second_injectors.slots(), value, &key)?,
            "injector_feed" => fill(plan.injector_feed.slots(), value, &key)?,
            "fuel" => fill(plan.fuel.slots(), value, &key)?,
            "cranking" => fill(plan.cranking.slots(), value, &key)?,
            "coils" => fill(plan.coils.slots(), value, &key)?,
            "trigger" => fill(plan.trigger.slots(), value, &key)?,
            "crank_sensor" => fill(plan.crank_sensor.slots(), value, &key)?,
            "cam_sensor" => fill(plan.cam_sensor.slots(), value, &key)?,
            "trigger_input" => fill(plan.trigger_input.slots(), value, &key)?,
            "outputs" => plan.outputs = entries(value, &key)?,
            "loads" => plan.loads = entries(value, &key)?,
            "relays" => plan.relays = entries(value, &key)?,
            _ => return Err(format!("a plan has no part named “{key}”")),
        }
    }
    Ok(plan)
}

fn entries<R: Record>(value: Node, path: &str) -> Result<Vec<R>, String> {
    let entry = |(at, value)| {
        let mut record = R::default();
        fill(record.slots(), value, &format!("{path}.{at}")).map(|()| record)
    };
    list(value, path)?.into_iter().enumerate().map(entry).collect()
}

fn fill(mut slots: Vec<(&'static str, Slot<'_>)>, value: Node, path: &str) -> Result<(), String> {
    let Node::Object(object) = value else {
        return Err(format!("“{path}” is not an object in braces"));
    };
    for (key, value) in object {
        let at = format!("{path}.{key}");
        let name = former::name_today(path, &key);
        let Some((_, slot)) = slots.iter_mut().find(|(it, _)| *it == name) else {
            let names: Vec<_> = slots.iter().map(|(name, _)| *name).collect();
            return Err(format!("there is no “{at}”; there are: {}", names.join(", ")));
        };
        match slot {
            Slot::Text(place) => {
                let text = former::text_today(path, name, text(value, &at)?);
                put(place, text).map_err(|texts| twice(path, name, &texts))?;
            }
            Slot::List(place) => **place = texts(value, &at)?,
        }
    }
    Ok(())
}

/// Puts a text into its place, unless another one stands there: of two that differ neither may be lost unseen.
fn put(place: &mut String, text: String) -> Result<(), String> {
    let (there, new) = (place.trim(), text.trim());
    if there.is_empty() {
        *place = text;
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

fn texts(value: Node, path: &str) -> Result<Vec<String>, String> {
    list(value, path)?.into_iter().map(|value| text(value, path)).collect()
}

fn list(value: Node, path: &str) -> Result<Vec<Node>, String> {
    match value {
        Node::List(values) => Ok(values),
        _ => Err(format!("“{path}” is not a list in brackets")),
    }
}

fn text(value: Node, path: &str) -> Result<String, String> {
    match value {
        Node::Text(text) => Ok(text),
        Node::Truth | Node::List(_) | Node::Object(_) => {
            Err(format!("“{path}” is neither a text in quotes nor a number"))
        }
    }
}

impl Serialize for Plan {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("quietpin", &self.quietpin)?;
        let heads =
            Fields(vec![("name", View::Text(&self.name)), ("notes", View::Text(&self.notes))]);
        for (name, value) in heads.written().0 {
            map.serialize_entry(name, &Written(value))?;
        }
        let parts = [
            ("conditions", self.conditions.views()),
            ("engine", self.engine.views()),
            ("channels", self.channels.views()),
            ("light", self.light.views()),
            ("strip", self.strip.views()),
            ("injectors", self.injectors.views()),
            ("second_injectors", self.second_injectors.views()),
            ("injector_feed", self.injector_feed.views()),
            ("fuel", self.fuel.views()),
            ("cranking", self.cranking.views()),
            ("coils", self.coils.views()),
            ("trigger", self.trigger.views()),
            ("crank_sensor", self.crank_sensor.views()),
            ("cam_sensor", self.cam_sensor.views()),
            ("trigger_input", self.trigger_input.views()),
        ];
        for (name, part) in parts {
            let fields = record(part);
            if !fields.0.is_empty() {
                map.serialize_entry(name, &fields)?;
            }
        }
        let outputs: Vec<_> = self.outputs.iter().map(|output| record(output.views())).collect();
        let loads: Vec<_> = self.loads.iter().map(|load| record(load.views())).collect();
        let relays: Vec<_> = self.relays.iter().map(|relay| record(relay.views())).collect();
        for (name, entries) in [("outputs", outputs), ("loads", loads), ("relays", relays)] {
            if !entries.is_empty() {
                map.serialize_entry(name, &entries)?;
            }
        }
        map.end()
    }
}

/// The fields of a record that are written.
struct Fields<'a>(Vec<(&'static str, View<'a>)>);

fn record<'a>(views: Vec<(&'static str, View<'a>)>) -> Fields<'a> {
    Fields(views).written()
}

impl Fields<'_> {
    /// Without the blank ones.
    fn written(mut self) -> Self {
        self.0.retain(|(_, view)| match view {
            View::Text(text) => !text.is_empty(),
            View::List(texts) => !texts.is_empty(),
        });
        self
    }
}

impl Serialize for Fields<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(self.0.len()))?;
        for (name, view) in &self.0 {
            map.serialize_entry(name, &Written(*view))?;
        }
        map.end()
    }
}

struct Written<'a>(View<'a>);

impl Serialize for Written<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0 {
            View::Text(text) => serializer.serialize_str(text),
            View::List(texts) => texts.serialize(serializer),
        }
    }
}
