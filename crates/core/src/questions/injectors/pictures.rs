//! The pictures: current after the output closes, current and voltage when it opens.

use crate::{
    injector::{
        DriverKind, InjectorAnswer, InjectorInputs, On,
        branch::{Ballast, CurrentEnd},
        trace,
    },
    message::Message,
    quantity::Measure,
    questions::injectors::words,
    report::{Curve, Level, Panel, Picture, Traces},
    say,
};

/// Both pictures; the second only where the clamp ends the current.
pub(super) fn pictures(inputs: &InjectorInputs, found: &InjectorAnswer) -> Vec<Picture> {
    let resistor = match &found.on {
        On::PlainSwitch(_, cures) => cures.resistor(),
        _ => None,
    };
    let mut pictures =
        vec![closing(inputs, found, &Ballast::NONE, say!(words::parts::PICTURE_CLOSING))];
    if let Some(resistor) = resistor {
        let caption =
            say!(words::parts::PICTURE_CLOSING_WITH, value = super::cures::sold(resistor.value));
        pictures.push(closing(inputs, found, &resistor.ballast(), caption));
    }
    pictures.extend(opened(inputs, found));
    pictures
}

fn closing(
    inputs: &InjectorInputs,
    found: &InjectorAnswer,
    ballast: &Ballast,
    caption: Message,
) -> Picture {
    let channel = match &found.on {
        On::CurrentControlled(channel) => Some(&**channel),
        _ => None,
    };
    let closing = trace::closing(inputs, &found.winding, channel, ballast);
    let last = |points: &[(f64, f64)]| points.last().map_or(0.0, |(t, _)| *t);
    let end = closing.iter().map(|it| last(&it.current)).fold(0.0, f64::max);
    let curves = closing
        .into_iter()
        .map(|it| Curve {
            name: say!(
                words::parts::CURVE_SUPPLY,
                corner = it.corner.name,
                supply = it.corner.supply
            ),
            points: it.current,
        })
        .collect();
    let mut levels = vec![Level {
        name: say!(words::parts::LEVEL_OPENS),
        at: found.opening.current.nominal.base(),
    }];
    if let Some(channel) = channel {
        let n = f64::from(inputs.per_output.max(1));
        let peak = inputs.peak_of_one(CurrentEnd::Nominal);
        levels.extend(peak.map(|at| Level { name: say!(words::parts::LEVEL_PEAK), at: at.base() }));
        let hold = inputs.output.hold.map_or(channel.hold_needed, |hold| hold.nominal) / n;
        levels.push(Level { name: say!(words::parts::LEVEL_HOLD), at: hold.base() });
    }
    let limit = inputs.output.limit.filter(|_| inputs.output.stage == DriverKind::PlainSwitch);
    levels.extend(limit.map(|limit| Level {
        name: say!(words::parts::LEVEL_LIMIT, n = inputs.per_output),
        at: limit.nominal.base() / f64::from(inputs.per_output.max(1)),
    }));
    let panels = vec![Panel { unit: "A", curves, levels }];
    Picture::Traces(Traces { caption, span: (0.0, end), panels })
}

fn opened(inputs: &InjectorInputs, found: &InjectorAnswer) -> Option<Picture> {
    let opened = trace::opened(inputs, &found.winding, &Ballast::NONE)?;
    let ends = opened.ends();
    let span =
        opened.voltage.first().zip(opened.voltage.last()).map(|(one, other)| (one.0, other.0))?;
    let clamp = inputs.output.clamp.voltage.nominal;
    let current = Panel {
        unit: "A",
        curves: vec![Curve { name: say!(words::parts::CURVE_CURRENT), points: opened.current }],
        levels: Vec::new(),
    };
    let voltage = Panel {
        unit: "V",
        curves: vec![Curve { name: say!(words::parts::CURVE_PIN), points: opened.voltage }],
        levels: vec![
            Level { name: say!(words::parts::LEVEL_CLAMP), at: clamp.base() },
            Level { name: say!(words::parts::LEVEL_BATTERY), at: opened.corner.supply.base() },
        ],
    };
    let caption = say!(
        words::parts::PICTURE_OPENED,
        time = ends,
        clamp = clamp,
        supply = opened.corner.supply
    );
    Some(Picture::Traces(Traces { caption, span, panels: vec![current, voltage] }))
}
