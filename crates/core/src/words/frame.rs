//! The questions, and what stands in the place of their answers for the moment in which there are none.

use super::Sentence;

pub(super) const SENTENCES: &[Sentence] = &[
    ("channels.question", "Which channel fires which cylinder, and is it wired like that?"),
    ("channels.pending", "One moment…"),
    ("injectors.question", "Can the outputs carry these injectors?"),
    ("injectors.pending", "One moment…"),
    ("rest.question", "May I connect this load?"),
    ("rest.pending", "One moment…"),
    ("trigger.question", "Does the crank and cam sensor suit its input?"),
    ("trigger.pending", "One moment…"),
    ("cranking.question", "When does the speed-switched relay pull in?"),
    ("cranking.pending", "One moment…"),
    ("coils.question", "Are the coils charged in time, and fed well enough?"),
    ("coils.pending", "One moment…"),
];
