//! The remedies side by side, and the one to take.

use super::{
    SolvedSet,
    cures::{rounded_hold, sold},
};
use crate::{
    injector::{
        InjectorCures,
        ballast::BallastPlace,
        carrying::Carries,
        remedy::{Means, Remedies, Remedy},
    },
    message::Message,
    quantity::{Holds, Measure, Time, Value},
    questions::injectors::words,
    report::{Row, Table, Tone},
    say, say_of,
    working::Step,
};

/// The table; its rows are as wired first, then least work first.
pub(super) fn table(remedies: &Remedies) -> Table {
    let columns = [
        words::parts::COLUMN_REMEDY,
        words::parts::COLUMN_CARRIES,
        words::parts::COLUMN_GETS,
        words::parts::COLUMN_OPENS_FROM,
        words::parts::COLUMN_OPENS_IN,
        words::parts::COLUMN_CLAMP,
        words::parts::COLUMN_VERDICT,
    ];
    let row = |(at, remedy): (usize, &Remedy)| Row {
        cells: vec![
            Value::text(means(remedy)),
            remedy.highest.show(),
            remedy.least.0.show(),
            remedy.opens_from.show(),
            times(remedy.opens_in),
            remedy.clamp.map_or(Value::text("its own"), Measure::show),
            Value::text(verdict(remedy, remedies.take == Some(at))),
        ],
        tone: (!remedy.works()).then_some(Tone::Bad),
    };
    let working: Vec<Step> = remedies.rows.iter().flat_map(working).collect();
    Table {
        caption: say!(words::parts::REMEDIES),
        columns: columns.map(|code| say_of!(code)).to_vec(),
        rows: remedies.rows.iter().enumerate().map(row).collect(),
        working,
    }
}

fn working(remedy: &Remedy) -> Vec<Step> {
    let own = match &remedy.means {
        Means::Others { working, .. } => working.clone(),
        Means::Resistor(resistor) | Means::FewerWithResistor { resistor, .. } => {
            resistor.working.clone()
        }
        _ => Vec::new(),
    };
    [own, remedy.working.clone()].concat()
}

fn means(remedy: &Remedy) -> String {
    let counted = |outputs: Option<u32>| {
        outputs.map_or(String::new(), |outputs| format!(", {outputs} outputs"))
    };
    match &remedy.means {
        Means::AsWired => "As planned".into(),
        Means::Fewer { per_output, outputs } => {
            format!("{per_output} on each output{}", counted(*outputs))
        }
        Means::Resistor(it) => {
            let place = match it.place {
                BallastPlace::EachInjector => "with each injector",
                BallastPlace::EachOutput => "in the shared wire",
            };
            format!(
                "{} {place}, {} ({})",
                sold(it.value).shown,
                it.rating.show().shown,
                it.series.name()
            )
        }
        Means::FewerWithResistor { per_output, outputs, resistor } => format!(
            "{per_output} on each output{}, {} with each injector, {} ({})",
            counted(*outputs),
            sold(resistor.value).shown,
            resistor.rating.show().shown,
            resistor.series.name()
        ),
        Means::Driver { peak, hold, channels, fuse, .. } => {
            let channels =
                channels.map_or(String::new(), |channels| format!(", {channels} channels"));
            let fuse = fuse
                .map_or(String::new(), |fuse| format!(", its supply fused {}", fuse.show().shown));
            let (peak, hold) = (peak.show(), rounded_hold(*hold).show());
            format!("A driver, peak {}, hold {}{channels}{fuse}", peak.shown, hold.shown)
        }
        Means::Output { limit } => format!("Outputs of {} or more", limit.show().shown),
        Means::Others { least, .. } => {
            format!("Other injectors, {} or more each", least.show().shown)
        }
    }
}

/// At rest, and the longest while cranking hot.
fn times((rest, cranking): (Option<Time>, Option<Time>)) -> Value {
    let shown =
        |time: Option<Time>| time.map_or_else(|| "never".to_owned(), |it| it.show().into_shown());
    Value::text(format!("{}; hot cranking {}", shown(rest), shown(cranking)))
}

fn verdict(remedy: &Remedy, is_taken: bool) -> String {
    let mut parts = Vec::new();
    match remedy.carries {
        Some(Carries::Nowhere) => parts.push("too much for the output".to_owned()),
        Some(Carries::NotEverywhere) => parts.push("too much in some cases".to_owned()),
        Some(Carries::NoMargin) => parts.push("no margin".to_owned()),
        Some(Carries::WithMargin) | None => {}
    }
    if remedy.missed != Holds::Never {
        parts.push("may not open".to_owned());
    }
    if !remedy.is_borne {
        parts.push("too much for its clamp".to_owned());
    }
    if parts.is_empty() {
        parts.push("works".to_owned());
    }
    let words = parts.join("; ");
    if is_taken { format!("best: {words}") } else { words }
}

/// Which one to take, and why.
pub(super) fn taken(solved: &SolvedSet<'_>, cures: &InjectorCures) -> Message {
    let remedies = &cures.side_by_side;
    let Some(remedy) = remedies.taken() else { return say!(words::parts::TAKE_NONE) };
    let what = means(remedy);
    let opening = solved.found.opening.current.high;
    let (left, corner) = (remedy.least.0, remedy.least.1.name);
    match &remedy.means {
        Means::Fewer { .. } => {
            say!(words::parts::TAKE_FEWER, what = what, most = remedy.highest)
        }
        Means::Resistor(_) | Means::FewerWithResistor { .. } => say!(
            words::parts::TAKE_RESISTOR,
            what = what,
            left = left,
            corner = corner,
            opening = opening
        ),
        Means::Driver { .. } => match cures.resistor() {
            Some(resistor) => say!(
                words::parts::TAKE_DRIVER_TIGHT,
                what = what,
                left = resistor.least_current,
                corner = resistor.least_at.name,
                opening = opening
            ),
            None => say!(words::parts::TAKE_DRIVER, what = what),
        },
        Means::AsWired | Means::Output { .. } | Means::Others { .. } => {
            say!(words::parts::TAKE_OTHER, what = what)
        }
    }
}
