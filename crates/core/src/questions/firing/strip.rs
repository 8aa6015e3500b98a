//! One cycle at a speed: every coil's charging, every injector's opening, with wrong wires in place.

use super::{Details, Mapped};
use crate::{
    channels::{
        PlugPosition,
        strip::{self, ChannelWindow, Windows},
    },
    engine::Engine,
    finding::Basis,
    message::Message,
    quantity::{CrankAngle, Measure, Value},
    questions::firing::words,
    read::Stripped,
    report::{
        Answer, Detail, Figure, Picture, Tone,
        picture::{CycleCylinder, CycleStrip, Outcome, StripWindow},
    },
    say,
    working::{Formula, Step, Working, step},
};

const SUBJECT: &str = "strip";

const AT_ONCE: Formula = Formula {
    symbols: "k = channels whose pulse ends less than α on",
    source: "count, just before each pulse ends",
};

/// What one kind of channels does.
pub(super) struct Lane {
    kind: &'static str,
    windows: Windows,
    working: Vec<Step>,
}

/// The answer; none where no speed is known. The channels are those of the coils, the injectors and a second set.
pub(super) fn answer(
    engine: &Engine,
    read: &Stripped,
    mapped: &[Option<Mapped>; 3],
    details: Option<&Details>,
) -> Option<Answer> {
    let speed = read.speed?;
    let lane = |kind, mapped: &Option<Mapped>, act| {
        let Mapped { layout, wired, .. } = mapped.as_ref()?;
        let mut working = Working::new();
        let windows = strip::windows(engine, layout, wired, act, speed, &mut working)?;
        Some(Lane { kind, windows, working: working.into_steps() })
    };
    let [coils, first, second] = mapped;
    let [opening, second_opening] = read.injections;
    let lanes: Vec<Lane> = [
        lane("dwell", coils, read.dwell),
        lane("injection", first, opening),
        lane("second", second, second_opening),
    ]
    .into_iter()
    .flatten()
    .collect();
    if lanes.is_empty() {
        return None;
    }
    let is_wired = mapped.iter().flatten().any(|it| it.is_seen);
    let picture = picture(engine, &lanes, is_wired);
    let (tone, verdict) = verdict(&lanes, misplaced(&picture));
    let mut answer = Answer::new(SUBJECT, tone, verdict);
    answer.title = Some(say!(words::strip::STRIP_TITLE, speed = speed));
    answer.basis = if is_wired { Basis::AsWired } else { Basis::AsPlanned };
    answer.why = Some(why(&lanes));
    answer.to_do = lanes.iter().filter(|it| it.windows.is_overrun()).map(cure).collect();
    answer.assume(crate::questions::coils::taken(&read.taken));
    answer.show(details.map(|it| (it.strip)(&lanes, picture)));
    Some(answer)
}

/// The angles, and the strip itself.
pub(super) fn detail(lanes: &[Lane], picture: CycleStrip) -> Detail {
    let pictures = vec![Picture::Strip(picture)];
    Detail { figures: lanes.iter().flat_map(figures).collect(), pictures, ..Detail::default() }
}

/// How many sparks come in the wrong place.
fn misplaced(strip: &CycleStrip) -> usize {
    strip.windows.iter().filter(|it| it.outcome == Outcome::Misplaced).count()
}

fn verdict(lanes: &[Lane], misplaced: usize) -> (Tone, Message) {
    if misplaced > 0 {
        return (Tone::Bad, say!(words::strip::STRIP_MISPLACED, n = misplaced));
    }
    let overrun = lanes.iter().find(|it| it.windows.is_overrun());
    match (overrun, lanes.first()) {
        (Some(Lane { kind: "dwell", .. }), _) => {
            (Tone::Bad, say!(words::strip::STRIP_DWELL_RUNS_OUT))
        }
        (Some(_), _) => (Tone::Bad, say!(words::strip::STRIP_NEVER_SHUT)),
        (None, Some(lane)) if lane.kind == "dwell" => {
            (Tone::Good, say!(words::strip::STRIP_COILS, n = lane.windows.at_once))
        }
        (None, lane) => {
            let n = lane.map_or(0, |it| it.windows.at_once);
            (Tone::Good, say!(words::strip::STRIP_INJECTORS, n = n))
        }
    }
}

fn why(lanes: &[Lane]) -> Message {
    let of = |kind: &str| lanes.iter().find(|it| it.kind == kind).map(|it| &it.windows);
    match (of("dwell"), of("injection")) {
        (Some(coils), Some(injectors)) => say!(
            words::strip::STRIP_WHY,
            dwell = coils.angle,
            least = coils.least,
            injection = injectors.angle,
            n = injectors.at_once
        ),
        (Some(it), None) => say!(words::strip::STRIP_WHY_COILS, dwell = it.angle, least = it.least),
        (None, Some(it)) => {
            say!(words::strip::STRIP_WHY_INJECTORS, injection = it.angle, n = it.at_once)
        }
        (None, None) => say!(words::strip::STRIP_WHY_SECOND),
    }
}

fn cure(lane: &Lane) -> Message {
    let least = lane.windows.least;
    if lane.kind == "dwell" {
        say!(words::strip::STRIP_DO_DWELL, least = least)
    } else {
        say!(words::strip::STRIP_DO_INJECTION, least = least)
    }
}

fn figures(lane: &Lane) -> Vec<Figure> {
    let (angle, at_once) = match lane.kind {
        "dwell" => {
            (say!(words::strip::FIGURE_DWELL_ANGLE), say!(words::strip::FIGURE_COILS_AT_ONCE))
        }
        "injection" => (
            say!(words::strip::FIGURE_INJECTION_ANGLE),
            say!(words::strip::FIGURE_INJECTORS_AT_ONCE),
        ),
        _ => (say!(words::strip::FIGURE_SECOND_ANGLE), say!(words::strip::FIGURE_SECOND_AT_ONCE)),
    };
    let windows = &lane.windows;
    let values = [("α", windows.angle.show())];
    let counted = vec![step(&AT_ONCE, &values, Value::from(windows.at_once))];
    vec![
        Figure::plain(angle, windows.angle, lane.working.clone()),
        Figure::plain(at_once, windows.at_once, counted),
    ]
}

fn picture(engine: &Engine, lanes: &[Lane], is_wired: bool) -> CycleStrip {
    let cylinder = |firing: &crate::engine::Firing| CycleCylinder {
        cylinder: firing.cylinder,
        angle_deg: firing.angle.degrees(),
    };
    let of = |lane: &Lane| {
        let windows = lane.windows.windows.iter();
        windows.flat_map(|it| drawn(engine, lane.kind, it)).collect::<Vec<_>>()
    };
    let caption = if is_wired {
        say!(words::strip::STRIP_PICTURE_WIRED)
    } else {
        say!(words::strip::STRIP_PICTURE)
    };
    CycleStrip {
        caption,
        cycle_deg: engine.cycle().degrees(),
        cylinders: engine.firings().iter().map(cylinder).collect(),
        windows: lanes.iter().flat_map(of).collect(),
    }
}

/// A window in the row of each cylinder that its channel reaches. A trailing plug's is left to that of the leading one, which
/// is charged with it.
fn drawn(engine: &Engine, kind: &'static str, window: &ChannelWindow) -> Vec<StripWindow> {
    let targets = window.targets.iter().filter(|it| it.position != PlugPosition::Trailing);
    let each = targets.map(|target| StripWindow {
        kind,
        channel: window.channel,
        cylinder: target.cylinder,
        from_deg: window.from.degrees(),
        to_deg: window.to.degrees(),
        outcome: if kind == "dwell" {
            outcome(engine, target.cylinder, window)
        } else {
            Outcome::Fires
        },
    });
    each.collect()
}

/// What the spark at the end of a charge does; it comes up to a quarter of a turn before its place, the advance.
fn outcome(engine: &Engine, cylinder: u32, window: &ChannelWindow) -> Outcome {
    let own = engine.angle_of(cylinder).unwrap_or_default();
    let error = (window.to - own).as_error(engine.cycle());
    let is_at = |place: f64| {
        let before = (CrankAngle::new(place) - error).as_error(engine.cycle()).degrees();
        (-30.0..=90.0).contains(&before)
    };
    if is_at(0.0) {
        Outcome::Fires
    } else if engine.cycle() != crate::engine::TURN && is_at(360.0) {
        Outcome::Wasted
    } else {
        Outcome::Misplaced
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::{EngineKind, Spacing};

    /// A spark comes up to a quarter of a turn before its top dead centre, its advance, and in the idle of a cold engine up to 30
    /// degrees after it: common practice, no source. A turn from there a four-stroke engine wastes it.
    #[test]
    fn a_spark_has_its_place_from_a_quarter_of_a_turn_before_its_top_to_a_little_after_it() {
        let engine = |kind| Engine::new(kind, 1, &[1], &Spacing::Even).expect("an engine");
        let (four, two) = (engine(EngineKind::FourStroke), engine(EngineKind::TwoStroke));
        let does = |engine: &Engine, before: f64| {
            let to = CrankAngle::new(-before).within(engine.cycle());
            let window = ChannelWindow { channel: 1, targets: Vec::new(), from: to, to };
            outcome(engine, 1, &window)
        };
        for (before, is_right) in [
            (94.0, false),
            (90.0, true),
            (86.0, true),
            (0.0, true),
            (-28.5, true),
            (-30.0, true),
            (-31.5, false),
        ] {
            let [right, a_turn_off] =
                if is_right { [Outcome::Fires, Outcome::Wasted] } else { [Outcome::Misplaced; 2] };
            assert_eq!(does(&four, before), right, "{before}");
            assert_eq!(does(&four, before + 360.0), a_turn_off, "{before}, a turn off");
            assert_eq!(does(&two, before), right, "{before} of a two-stroke");
            assert_eq!(does(&two, before + 360.0), right, "a turn is its cycle");
        }
    }
}
