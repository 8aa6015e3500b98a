//! What would keep a plain switch inside its limit: each is solved before it is offered.

use super::{
    Both, Fewer, InjectorCures, InjectorInputs,
    ballast::{self, BallastFit, BallastPlace},
    branch::{self, Ballast},
    carrying::Carrying,
    controlled::Controlled,
    opening::Opening,
    outputs,
    remedy::Remedies,
    turn_off,
};
use crate::{
    quantity::{Current, Holds, Measure},
    tables::preferred::Series,
};

pub(super) fn cures(
    inputs: &InjectorInputs,
    opening: &Opening,
    carrying: &Carrying,
) -> InjectorCures {
    let is_borne = turn_off::is_borne(inputs, &Ballast::NONE);
    // another resistor takes the place of one that is there, and a driver wants none
    let bare = &inputs.without_resistor();
    // nobody fits a part for a hair
    let over = carrying.over != Holds::Never && !carrying.is_hair || !is_borne;
    let fit =
        |place, series| over.then(|| ballast::fit(bare, opening, carrying.limit, place, series));
    let alone = InjectorInputs { per_output: 1, ..bare.clone() };
    let fewer =
        if carrying.has_margin() && is_borne { None } else { fewer(inputs, carrying.limit) };
    let each = fit(BallastPlace::EachInjector, Series::E12);
    let finer = finer(each.as_ref(), fit(BallastPlace::EachInjector, Series::E24));
    let both = match (&fewer, &each, &finer) {
        (
            None,
            Some(BallastFit::Starves(_) | BallastFit::NoValue(_) | BallastFit::TooHot(..)),
            None,
        ) => both(bare, opening, carrying.limit),
        _ => None,
    };
    let shared =
        if inputs.per_output > 1 { fit(BallastPlace::EachOutput, Series::E12) } else { None };
    let mut cures = InjectorCures {
        fewer,
        each,
        finer,
        shared,
        both,
        driver: Controlled::of(&alone, opening, None),
        side_by_side: Remedies::default(),
    };
    if !carrying.has_margin() || !is_borne {
        cures.side_by_side = Remedies::of(inputs, opening, carrying.limit, &cures);
    }
    cures
}

/// The E24 value, where it differs from the E12 one.
fn finer(each: Option<&BallastFit>, finer: Option<BallastFit>) -> Option<Box<ballast::Resistor>> {
    let Some(BallastFit::Offered(finer)) = finer else { return None };
    match each {
        Some(BallastFit::Offered(each)) if each.value.base() <= finer.value.base() => None,
        _ => Some(finer),
    }
}

/// The most injectors below the present number that an output carries when each has a resistor.
fn both(inputs: &InjectorInputs, opening: &Opening, limit: Current) -> Option<Both> {
    fewer_each(inputs).find_map(|per_output| {
        let tried = InjectorInputs { per_output, ..inputs.clone() };
        match ballast::fit(&tried, opening, limit, BallastPlace::EachInjector, Series::E12) {
            BallastFit::Offered(resistor) => {
                Some(Both { per_output, outputs: outputs(inputs.count, per_output), resistor })
            }
            _ => None,
        }
    })
}

/// The most injectors below the present number that an output carries with margin.
fn fewer(inputs: &InjectorInputs, limit: Current) -> Option<Fewer> {
    fewer_each(inputs).find_map(|per_output| {
        let tried = InjectorInputs { per_output, ..inputs.clone() };
        let carrying = Carrying::of(&branch::at_corners(&tried, &Ballast::NONE), limit);
        let fits = carrying.has_margin() && turn_off::is_borne(&tried, &Ballast::NONE);
        fits.then(|| Fewer {
            per_output,
            highest: carrying.highest,
            outputs: outputs(inputs.count, per_output),
        })
    })
}

/// Smaller numbers on an output, the largest first, for which there are outputs enough.
fn fewer_each(inputs: &InjectorInputs) -> impl Iterator<Item = u32> {
    (1..inputs.per_output).rev().filter(|per_output| inputs.has_outputs_for(*per_output))
}
