//! What the output's clamp makes of the injectors' current, in words.

use super::SolvedSet;
use crate::{
    fields,
    finding::{Finding, Findings, Severity},
    injector::{
        InjectorAnswer, InjectorInputs,
        branch::{Ballast, CurrentEnd},
        turn_off::TurningOff,
    },
    quantity::{Band, Energy, Measure, Time},
    questions::injectors::words,
    report::{Answer, Figure, Tone},
    say, say_of,
    working::Step,
};

/// Inductance, time and energy of a turn-off; the heat at the highest speed, where that is known.
pub(super) fn figures(inputs: &InjectorInputs, found: &InjectorAnswer) -> Vec<Figure> {
    let winding = &found.winding;
    let label =
        if winding.is_given { words::parts::INDUCTANCE } else { words::parts::INDUCTANCE_ASSUMED };
    let mut figures =
        vec![Figure::new(say_of!(label), winding.inductance, winding.working.clone())];
    let off = &found.turn_off;
    let [_, _, rest, _, _] = &off.corners;
    if let (true, Some((time, _)), Some((energy, _))) = (off.ends, rest.time, rest.energy) {
        let times =
            off.corners.iter().filter_map(|at| at.time).flat_map(|(one, other)| [one, other]);
        let times: Band<Time> = times.fold(Band::exact(time), |band, it| band.widened_to(it));
        let energies =
            off.corners.iter().filter_map(|at| at.energy).flat_map(|(one, other)| [one, other]);
        let energies: Band<Energy> =
            energies.fold(Band::exact(energy), |band, it| band.widened_to(it));
        let working = working(inputs, found);
        figures.push(Figure::new(say!(words::parts::TURN_OFF_TIME), times, working.clone()));
        figures.push(Figure::new(say!(words::parts::TURN_OFF_ENERGY), energies, working));
    }
    if let Some(heat) = &off.heat {
        let label = say!(words::parts::OUTPUT_HEAT, frequency = heat.frequency);
        figures.push(Figure::plain(label, heat.power, heat.working.clone()));
    }
    figures
}

/// How the turn-off at rest and the worst one were found.
fn working(inputs: &InjectorInputs, found: &InjectorAnswer) -> Vec<Step> {
    let turning = TurningOff { inputs, winding: &found.winding, ballast: &Ballast::NONE };
    let mut working = turning.working_at(&found.usual().corner, CurrentEnd::Nominal);
    working.extend(turning.working_at(&found.turn_off.worst.corner, CurrentEnd::Most));
    working
}

/// Says where the output does not bear it.
pub(super) fn judge(solved: &SolvedSet<'_>, answer: &mut Answer, findings: &mut Findings) {
    let SolvedSet { inputs, found, .. } = solved;
    let (off, clamp) = (&found.turn_off, &inputs.output.clamp);
    // behind a diode no kick comes to the clamp
    if off.is_borne() || inputs.has_diode {
        return;
    }
    let corner = off.worst.corner.name;
    let mut found_all = Vec::new();
    if !off.ends {
        let supply = inputs.corners.iter().map(|it| it.supply.base()).fold(0.0, f64::max);
        let message = say!(
            words::parts::CLAMP_TOO_LOW,
            clamp = clamp.voltage.low,
            supply = crate::quantity::volts(supply)
        );
        found_all.push(Finding::new(
            Severity::Danger,
            solved.key(fields::injectors::CLAMP),
            message,
        ));
    }
    if let (Some(false), Some((_, most)), Some(bears)) =
        (off.bears_energy, off.worst.energy, clamp.energy)
    {
        let message =
            say!(words::parts::CLAMP_OVERLOADED, energy = most, corner = corner, bears = bears);
        let working = working(inputs, found);
        let finding =
            Finding::new(Severity::Danger, solved.key(fields::injectors::CLAMP_ENERGY), message);
        found_all.push(finding.shown_by(working));
    }
    if let (Some(false), Some(heat), Some(bears)) = (off.bears_heat, &off.heat, clamp.heat) {
        let message = say!(
            words::parts::OUTPUT_TOO_HOT,
            heat = heat.power,
            frequency = heat.frequency,
            bears = bears
        );
        let working = heat.working.iter().cloned();
        let finding =
            Finding::new(Severity::Danger, solved.key(fields::injectors::OUTPUT_HEAT), message);
        found_all.push(finding.shown_by(working));
    }
    // a verdict that already says no says it sooner
    if answer.verdict.tone > Tone::Bad {
        let first = found_all.first().map(|it| it.message.clone());
        answer.verdict =
            crate::report::Verdict { tone: Tone::Bad, message: say!(words::parts::KICK_TOO_MUCH) };
        answer.why = first.or(answer.why.take());
    }
    let remedies = [say!(words::parts::STRONGER_CLAMP)];
    let cured = found_all.into_iter().map(|it| it.cured_by(remedies.iter().cloned()));
    findings.extend(cured);
}
