//! A JSON document as far as a plan needs it: texts, lists, objects.

use std::fmt;

use crate::math;
use serde::{
    Deserialize, Deserializer,
    de::{Error, MapAccess, SeqAccess, Visitor},
};

/// A part of a document. A number is kept as its text: a plan computes with none.
#[derive(Debug)]
pub(super) enum DocumentNode {
    /// A text, or a number without quotes; blank for `null`.
    Text(String),
    /// In brackets.
    List(Vec<DocumentNode>),
    /// In braces, in the order of the file.
    Object(Vec<(String, DocumentNode)>),
    /// `true` or `false`, which stand nowhere in a plan.
    Truth(bool),
}

impl DocumentNode {
    /// A member of an object.
    pub(super) fn member(&self, name: &str) -> Option<&DocumentNode> {
        let Self::Object(members) = self else { return None };
        members.iter().find(|(key, _)| key == name).map(|(_, node)| node)
    }

    /// A text, without blanks around it.
    pub(super) fn text(&self) -> Option<&str> {
        if let Self::Text(text) = self { Some(text.trim()) } else { None }
    }

    /// Whether nothing is said there.
    pub(super) fn is_blank(&self) -> bool {
        match self {
            Self::Text(text) => text.trim().is_empty(),
            Self::List(nodes) => nodes.iter().all(Self::is_blank),
            Self::Object(members) => members.iter().all(|(_, node)| node.is_blank()),
            Self::Truth(_) => false,
        }
    }

    /// The whole number that a text holds.
    pub(super) fn whole(&self) -> Option<u64> {
        if let Self::Text(text) = self { text.parse().ok() } else { None }
    }
}

impl<'de> Deserialize<'de> for DocumentNode {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(NodeVisitor)
    }
}

struct NodeVisitor;

impl<'de> Visitor<'de> for NodeVisitor {
    type Value = DocumentNode;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a text, a number, a list or an object")
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<DocumentNode, E> {
        Ok(DocumentNode::Text(text.to_owned()))
    }
    fn visit_u64<E: Error>(self, number: u64) -> Result<DocumentNode, E> {
        Ok(DocumentNode::Text(number.to_string()))
    }
    fn visit_i64<E: Error>(self, number: i64) -> Result<DocumentNode, E> {
        Ok(DocumentNode::Text(number.to_string()))
    }
    fn visit_f64<E: Error>(self, number: f64) -> Result<DocumentNode, E> {
        Ok(DocumentNode::Text(math::shortest(number)))
    }
    fn visit_bool<E: Error>(self, truth: bool) -> Result<DocumentNode, E> {
        Ok(DocumentNode::Truth(truth))
    }
    fn visit_unit<E: Error>(self) -> Result<DocumentNode, E> {
        Ok(DocumentNode::Text(String::new()))
    }
    fn visit_none<E: Error>(self) -> Result<DocumentNode, E> {
        self.visit_unit()
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<DocumentNode, A::Error> {
        let mut nodes = Vec::new();
        while let Some(node) = list.next_element()? {
            nodes.push(node);
        }
        Ok(DocumentNode::List(nodes))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<DocumentNode, A::Error> {
        let mut members = Vec::new();
        while let Some(member) = map.next_entry()? {
            members.push(member);
        }
        Ok(DocumentNode::Object(members))
    }
}
