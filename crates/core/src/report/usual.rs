//! The usual report: a page or two to take to the car. What is said at length in the report is said here once, in few words:
//! verdicts, what was found with its first cure, what to enter, to buy and to prove, and what was assumed.

mod cautions;
mod facts;
mod names;
mod parts;
mod proofs;
mod settings;
mod step;
mod steps;
mod taken;
mod told;
mod verdicts;
mod words;

pub use facts::{Cured, Fact};
pub use parts::Bought;
pub use settings::Setting;
pub use taken::{Assumption, taken};
pub use told::{PINS, Pairs};
pub use verdicts::{Judged, Verdicts};

use crate::{
    message::Message,
    questions::{
        coils::words as coils,
        injectors::words::{self as injectors_words, parts as injectors},
    },
    report::{Answer, Report, Tone},
};

/// The usual report. All of it follows from the whole one.
#[derive(Clone, Debug, PartialEq)]
pub struct Usual {
    /// The plan's name.
    pub name: String,
    /// Each question with its verdicts.
    pub questions: Vec<Verdicts>,
    /// What was found: Dangers and Faults by when they strike, then Doubts, then Notes.
    pub facts: Vec<Fact>,
    /// What is entered in the controller.
    pub enter: Vec<Setting>,
    /// What is bought.
    pub buy: Vec<Bought>,
    /// What a meter reads at the bare pins, about the outputs.
    pub pins: Vec<Line>,
    /// What a test lamp does there.
    pub lamps: Vec<Line>,
    /// What else is proved at the car.
    pub prove: Vec<Line>,
    /// What to beware of.
    pub cautions: Vec<Message>,
    /// What was assumed, and what rests on it.
    pub assumed: Vec<Assumption>,
}

/// A few words, and all that they are about.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Names of parts, or of outputs; those that count on as one.
    pub about: Vec<String>,
    /// The words.
    pub words: Message,
}

/// The usual report of a report.
pub fn usual(report: &Report) -> Usual {
    let chosen = chosen(report);
    let facts = facts::facts(report);
    Usual {
        name: report.name.clone(),
        questions: verdicts::questions(report, &facts),
        facts,
        enter: settings::settings(report, &chosen),
        buy: parts::parts(report, &chosen),
        pins: proofs::at_pins(report, step::StepUse::Pin),
        lamps: proofs::at_pins(report, step::StepUse::Lamp),
        prove: proofs::proofs(&chosen),
        cautions: cautions::cautions(report, &chosen),
        assumed: taken(report),
    }
}

/// Whether it is known what a step or a caution of this code is for.
pub fn knows(code: &str) -> bool {
    step::known(code).is_some() || cautions::is_known(code)
}

/// Something that the report says to do, of the ways that there are the first.
#[derive(Clone, Debug)]
struct Chosen<'a> {
    message: &'a Message,
    /// What it is about.
    about: String,
    subject: &'a str,
    /// The answer that says it; none where it cures what was found.
    answer: Option<&'a Answer>,
}

/// The first cure of all that was found, then what the answers say, but for other ways to the same.
fn chosen(report: &Report) -> Vec<Chosen<'_>> {
    let cures = report.findings.iter().filter_map(|finding| {
        let message = finding.remedies.first()?;
        Some(Chosen {
            message,
            about: facts::about(report, finding),
            subject: &finding.subject,
            answer: None,
        })
    });
    let mut chosen: Vec<_> = cures.collect();
    let is_remedy = |message: &Message| {
        report.findings.iter().any(|finding| finding.remedies.contains(message))
    };
    for answer in report.sections.iter().flat_map(|section| &section.answers) {
        // where one of the steps cures what was found, the other cures beside it are other ways to the same
        let is_cured = answer.to_do.iter().any(is_remedy);
        let is_other = |message: &Message| is_remedy(message) || is_cured && step::is_cure(message);
        let heading = answer.to_do.iter().position(|it| it.code == injectors_words::ANY_ONE.code);
        let steps = heading.filter(|_| is_cured).unwrap_or(usize::MAX);
        let steps = answer.to_do.iter().take(steps);
        let said = [&answer.verdict.message].into_iter().chain(&answer.why).chain(steps);
        let said = said.filter(|message| !is_other(message));
        let load = names::in_gap(answer.title.as_ref(), "load");
        let called = || load.map(str::to_owned);
        chosen.extend(said.map(|message| Chosen {
            message,
            about: called().unwrap_or_else(|| names::called(report, &answer.subject)),
            subject: &answer.subject,
            answer: Some(answer),
        }));
    }
    chosen
}

impl Chosen<'_> {
    /// Whether it speaks of what is there already, and right.
    fn is_there(&self) -> bool {
        self.answer.is_some_and(|answer| answer.verdict.tone == Tone::Good)
    }

    /// Whether it says what a feed needs that has a fuse and a relay: what is wrong with them is told where it was found.
    fn is_fitted(&self) -> bool {
        let is_feed =
            [injectors::FEED_FIT, coils::FEED_FIT].iter().any(|it| it.code == self.message.code);
        is_feed && self.answer.is_some_and(|answer| answer.verdict.tone != Tone::Open)
    }
}

/// What is said in the same words of several, as one.
fn gathered(said: impl IntoIterator<Item = (String, Message)>) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    for (about, words) in said {
        match lines.iter_mut().find(|line| line.words.text == words.text) {
            Some(line) if line.about.contains(&about) => {}
            Some(line) => line.about.push(about),
            None => lines.push(Line { about: vec![about], words }),
        }
    }
    for line in &mut lines {
        line.about.retain(|it| !it.is_empty());
        line.about = names::folded(&line.about);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        demo,
        finding::{Moment, Severity},
        plan::Plan,
        report::report,
        whole_car,
    };

    fn typed(texts: &[(&str, &str)]) -> Plan {
        let mut plan = whole_car();
        for (path, text) in texts {
            assert!(plan.set(path, text), "{path} is no place");
        }
        plan
    }

    #[test]
    fn a_plan_without_a_word_has_its_usual_report() {
        let usual = usual(&report(&Plan::default()));
        assert!(usual.facts.is_empty(), "nothing is wrong");
        assert!(usual.enter.is_empty() && usual.buy.is_empty() && usual.pins.is_empty());
        assert!(usual.questions.iter().all(|it| it.tone == Tone::Open));
    }

    #[test]
    fn outputs_that_read_alike_stand_in_one_line() {
        let usual = usual(&report(&whole_car()));
        let lines: Vec<_> = usual.pins.iter().map(|it| it.about.join(", ")).collect();
        assert_eq!(lines, ["D1 to D12", "H1 to H6", "S1 to S4", "L1, L2"]);
    }

    #[test]
    fn the_same_of_several_loads_is_told_once_and_each_is_named() {
        let usual = usual(&report(&typed(&[
            ("loads.0.suppression", "none"),
            ("outputs.0.clamp", ""),
            ("outputs.0.clamp_energy", ""),
            ("loads.1.suppression", "none"),
        ])));
        let named = |name: &str| {
            usual
                .facts
                .iter()
                .filter(|it| it.about == name || it.also.iter().any(|also| also == name))
                .count()
        };
        assert!(named("boost valve") >= 1 && named("canister valve") >= 1, "{:?}", usual.facts);
        let mut codes: Vec<_> = usual.facts.iter().map(|it| (it.code, it.severity)).collect();
        let all = codes.len();
        codes.sort_unstable();
        codes.dedup();
        assert_eq!(codes.len(), all, "each once: {codes:?}");
    }

    #[test]
    fn what_is_grave_is_told_by_when_it_strikes() {
        let facts = usual(&report(&demo())).facts;
        let grave = facts.iter().filter(|it| it.severity <= Severity::Fault);
        let moments: Vec<_> = grave.map(|it| it.moment).collect();
        assert_eq!(moments, [Moment::KeyOn, Moment::Cranking, Moment::Cranking, Moment::Cranking]);
    }

    #[test]
    fn a_cure_is_said_once() {
        let facts = usual(&report(&demo())).facts;
        // two crossed leads, one order to enter
        let again: Vec<_> =
            facts.iter().flat_map(|it| &it.cures).filter_map(|it| it.said_at).collect();
        assert_eq!(again, [1]);
    }

    #[test]
    fn what_a_relay_takes_from_another_is_no_usual_value() {
        let assumed = usual(&report(&whole_car())).assumed;
        let pump = assumed.iter().find(|it| it.path == "relays.1.resistance");
        assert!(pump.is_some_and(|it| it.is_as_another), "it is like the coil relay");
        assert!(
            assumed.iter().all(|it| it.path != "loads.0.suppression_resistance"),
            "a diode is no resistor"
        );
    }
}
