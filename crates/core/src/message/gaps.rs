//! What stands in the gaps of a sentence. There are few of them: a row of pairs takes far less program than a map.

use serde::{Serialize, Serializer};

use crate::quantity::Value;

/// The values in a sentence's gaps, each by its name, in the order of their names.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Gaps(Vec<(&'static str, Value)>);

impl Gaps {
    /// The value in a gap.
    pub fn get(&self, name: &str) -> Option<&Value> {
        self.0.iter().find(|it| it.0 == name).map(|it| &it.1)
    }

    /// Whether there is a gap of this name.
    pub fn contains_key(&self, name: &str) -> bool {
        self.get(name).is_some()
    }

    /// Whether nothing stands in any.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// All of them.
    pub fn iter(&self) -> std::slice::Iter<'_, (&'static str, Value)> {
        self.0.iter()
    }

    /// Fills a gap; what stood there is gone.
    pub(crate) fn put(&mut self, name: &'static str, value: Value) {
        let at = self.0.iter().position(|it| it.0 >= name).unwrap_or(self.0.len());
        match self.0.get_mut(at) {
            Some(there) if there.0 == name => there.1 = value,
            _ => self.0.insert(at, (name, value)),
        }
    }
}

impl<'a> IntoIterator for &'a Gaps {
    type Item = &'a (&'static str, Value);
    type IntoIter = std::slice::Iter<'a, (&'static str, Value)>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

impl FromIterator<(&'static str, Value)> for Gaps {
    fn from_iter<I: IntoIterator<Item = (&'static str, Value)>>(pairs: I) -> Self {
        let mut gaps = Self::default();
        for (name, value) in pairs {
            gaps.put(name, value);
        }
        gaps
    }
}

impl Serialize for Gaps {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(name, value)| (name, value)))
    }
}

#[cfg(test)]
mod tests {
    use super::Gaps;

    #[test]
    fn they_stand_in_the_order_of_their_names_and_the_last_value_stays() {
        let pairs = [("n", "1".into()), ("load", "fan".into()), ("pin", "A1".into())];
        let gaps = pairs.into_iter().chain([("n", "2".into())]).collect::<Gaps>();
        let names: Vec<_> = gaps.iter().map(|it| (it.0, it.1.shown.as_str())).collect();
        assert_eq!(names, [("load", "fan"), ("n", "2"), ("pin", "A1")]);
        assert!(gaps.contains_key("pin") && !gaps.contains_key("p") && !gaps.is_empty());
    }
}
