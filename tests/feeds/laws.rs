//! What must hold for any feed.

use proptest::prelude::*;
use quietpin_core::{
    finding::Severity,
    plan::Plan,
    report::{Report, report},
    tables::{fuses, wires},
};
use quietpin_tests::typed::put;

use super::{about, feed, figure, found, plan};

const RELAY: &str = "feeds.relay.0";

/// What overheats before the fuse blows, or as it runs.
const EXPOSED: [&str; 5] = [
    "feeds.fuse-over-wire",
    "feeds.fuse-near-wire",
    "feeds.fuse-never-blows",
    "feeds.fuse-over-contact",
    "feeds.wire-hot",
];

/// How grave the gravest of these is: nothing is least.
fn gravest(report: &Report, codes: &[&str]) -> u8 {
    let of = |severity: Severity| match severity {
        Severity::Danger => 4,
        Severity::Fault => 3,
        Severity::Doubt => 2,
        Severity::Note => 1,
    };
    let own = found(report).into_iter().filter(|it| codes.contains(&it.message.code));
    own.map(|it| of(it.severity)).max().unwrap_or_default()
}

/// A feed as it is typed.
#[derive(Clone, Debug)]
struct Typed {
    purpose: &'static str,
    draws: f64,
    fuse: String,
    rating: String,
    size: String,
    length: f64,
    air: f64,
    bundled: u8,
}

impl Typed {
    fn plan(&self) -> Plan {
        let (draws, length) = (format!("{:.2} A", self.draws), format!("{:.2} m", self.length));
        let (air, bundled) = (format!("{:.0} °C", self.air), self.bundled.to_string());
        feed(&[
            ("relays.0.purpose", self.purpose),
            ("relays.0.draws", &draws),
            ("relays.0.fuse", &self.fuse),
            ("relays.0.rating", &self.rating),
            ("relays.0.lead_size", &self.size),
            ("relays.0.lead_length", &length),
            ("wiring.ambient", &air),
            ("wiring.bundled", &bundled),
        ])
    }

    fn report(&self) -> Report {
        report(&self.plan())
    }
}

fn sized(at: usize) -> String {
    format!("{} mm2", wires::SIZES[at.min(wires::SIZES.len() - 1)])
}

fn fused(at: usize) -> String {
    format!("{} A", fuses::RATINGS_A[at.min(fuses::RATINGS_A.len() - 1)])
}

prop_compose! {
    fn any_feed()(
        purpose in prop::sample::select(&["pump", "fan", "lamps", "heater", "other"][..]),
        draws in 0.02..29.9,
        fuse in 3..fuses::RATINGS_A.len(),
        rating in prop::sample::select(&["", "20 A", "30 A", "40 A", "70 A"][..]),
        size in 2..14_usize,
        length in 0.0..20.0,
        air in 20.0..100.0,
        bundled in 1..12_u8,
    ) -> Typed {
        let (fuse, size, rating) = (fused(fuse), sized(size), rating.to_owned());
        Typed { purpose, draws, fuse, rating, size, length, air, bundled }
    }
}

/// The plan with the first cure of the first finding of this question, as often as one is offered.
fn cured(plan: &Plan) -> Plan {
    let mut plan = plan.clone();
    for _ in 0..8 {
        let report = report(&plan);
        let cures = found(&report);
        let mut cures = cures.iter().flat_map(|it| &it.remedies).filter(|it| !it.edits.is_empty());
        let Some(cure) = cures.next() else { break };
        plan = plan.edited(&cure.edits).expect("it has its place");
    }
    plan
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(96) })]

    #[test]
    fn a_thicker_wire_is_never_worse(of in any_feed(), thin in 0..20_usize, more in 1..20_usize, is_fused: bool) {
        let fuse = if is_fused { of.fuse.clone() } else { String::new() };
        let with = |size: usize| Typed { size: sized(size), fuse: fuse.clone(), ..of.clone() }.report();
        let (thin, thick) = (with(thin), with(thin + more));
        prop_assert!(gravest(&thick, &EXPOSED) <= gravest(&thin, &EXPOSED));
        let lost = |report: &Report| figure(report, RELAY, "feeds.figure-lost").expect("it is known");
        prop_assert!(lost(&thick) <= lost(&thin));
    }

    #[test]
    fn a_bigger_fuse_never_protects_more(of in any_feed(), small in 0..16_usize, more in 1..16_usize) {
        let with = |fuse: usize| Typed { fuse: fused(fuse), ..of.clone() }.report();
        let (small, big) = (gravest(&with(small), &EXPOSED), gravest(&with(small + more), &EXPOSED));
        prop_assert!(big >= small);
    }

    /// What is to be fitted where fuse, wire or both are not known leaves nothing to say.
    #[test]
    fn what_is_to_be_fitted_is_big_enough(of in any_feed()) {
        let blank = Typed { fuse: String::new(), size: String::new(), rating: String::new(), ..of };
        let plan = blank.plan();
        let before = report(&plan);
        let to_do = &about(&before, RELAY).expect("it is answered").to_do;
        let edits = to_do.iter().find(|it| !it.edits.is_empty());
        let edits = &edits.expect("something fits").edits;
        let after = report(&plan.edited(edits).expect("it has its place"));
        prop_assert_eq!(super::codes(&after), vec![""; 0]);
        prop_assert_eq!(super::verdict(&after, RELAY), "feeds.open-contact");
    }

    /// The first cure that is offered, and that of what is left: in the end nothing is left but an inrush of which no
    /// relay alone takes care: no contact is sold for it, or its fuse would have to be larger as well.
    #[test]
    fn what_is_offered_cures(of in any_feed()) {
        let after = report(&cured(&of.plan()));
        let left = super::codes(&after);
        prop_assert!(left.iter().all(|it| *it == "feeds.inrush-over-contact"), "{left:?}");
    }

    /// Each relay's own current is counted once, through whichever contacts it flows.
    #[test]
    fn the_feeds_add_up_to_what_the_alternator_must_give(
        draws in prop::collection::vec(0.1..20.0, 1..6),
        behind in prop::collection::vec(any::<prop::sample::Index>(), 6),
        is_behind in prop::collection::vec(any::<bool>(), 6),
    ) {
        let mut plan = plan(&[("battery.alternator", "200 A")]);
        let typed: Vec<f64> = draws.iter().map(|it: &f64| (it * 100.0).round() / 100.0).collect();
        for (at, draws) in typed.iter().enumerate() {
            put(&mut plan, &format!("relays.{at}.name"), &format!("R{at}"));
            put(&mut plan, &format!("relays.{at}.draws"), &format!("{draws} A"));
            if at > 0 && is_behind[at] {
                // behind one before it, so that none is behind itself
                put(&mut plan, &format!("relays.{at}.behind"), &format!("R{}", behind[at].index(at)));
            }
        }
        let report = report(&plan);
        let needed = figure(&report, "feeds.alternator", "feeds.figure-needed").expect("it is known");
        let sum: f64 = typed.iter().sum();
        prop_assert!((needed - sum).abs() < 1e-9, "{needed} is not {sum}");
        let first = (0..typed.len()).filter(|at| *at == 0 || !is_behind[*at]);
        let carried: f64 = first
            .filter_map(|at| figure(&report, &format!("feeds.relay.{at}"), "feeds.figure-draws"))
            .sum();
        prop_assert!((carried - sum).abs() < 1e-9, "{carried} is not {sum}");
    }
}
