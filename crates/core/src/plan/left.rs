//! What a file holds that has no place in a plan: kept as it was, and told.

use super::node::DocumentNode;

/// A text without a place in the plan: the path at which it stood in the file, and the text.
pub type LeftOver = (String, String);

/// The member of a file in which they are kept.
pub(super) const MEMBER: &str = "left_over";

/// Every text of a node, with its path.
pub(super) fn leaves(node: DocumentNode, path: &str, left: &mut Vec<LeftOver>) {
    match node {
        DocumentNode::Text(text) if text.trim().is_empty() => {}
        DocumentNode::Text(text) => left.push((path.to_owned(), text)),
        DocumentNode::Truth(truth) => left.push((path.to_owned(), truth.to_string())),
        DocumentNode::List(nodes) => {
            for (at, node) in nodes.into_iter().enumerate() {
                leaves(node, &format!("{path}.{at}"), left);
            }
        }
        DocumentNode::Object(members) => {
            for (key, node) in members {
                leaves(node, &format!("{path}.{key}"), left);
            }
        }
    }
}
