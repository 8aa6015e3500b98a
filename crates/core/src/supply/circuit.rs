//! What a circuit draws, and whether its fuse, its contact and its wire bear it.

use super::{
    blow,
    laid::LaidWire,
    short::{self, FusedRun, Protection},
};
use crate::{
    quantity::{
        Area, Band, Current, Length, Measure, Ratio, Resistance, Temperature, Time, Voltage,
        amperes, ohms, seconds, share,
    },
    tables::{copper, fuses},
    working::{Formula, Step, step},
};

const TOTAL: Formula = Formula {
    symbols: "I = I_1 + I_2 + …",
    source: "the sum of the RMS of all that is on it, at once: it is no more",
};
const AVERAGE: Formula = Formula {
    symbols: "I_mean = I - I_pulsed",
    source: "of a pulse of duty D the mean is root D of its RMS; what is pulsed leaves out the rest of it",
};
const ALONE: Formula = Formula {
    symbols: "I = I_1",
    source: "what was typed, or the RMS of the loads, the coils or the injectors that are on it",
};
const INRUSH: Formula = Formula {
    symbols: "I_inrush = k I",
    source: "a motor at rest 6.5 times, a cold lamp 10 times, a starter's solenoid 4 times for 100 ms, less what battery and wire leave of it: common practice, no source",
};
const TYPED: Formula = Formula { symbols: "I_inrush = I_typed", source: "what was typed" };
const LEAST: Formula = Formula { symbols: "I_rated = I / 75%", source: fuses::SOURCE };
const DROP: Formula = Formula {
    symbols: "V_drop = 2 I R_w",
    source: "Ohm's law, out and back: the way back is assumed as long and as thick",
};
const DROP_BACK: Formula = Formula {
    symbols: "V_drop = I (R_w + R_b + R_body)",
    source: "Ohm's law, out and back: a ground wire as thick, and 5 mΩ through body and bolts: common practice, no source",
};

/// From the bolt of a ground wire through the body to the battery: common practice, no source.
const BODY_OHM: f64 = 0.005;

/// The first moment of what is switched on, for what heats a fuse: its peak, and how long that would have to last.
const MOTOR: (f64, f64) = (6.5, 0.025);
const LAMP: (f64, f64) = (10.0, 0.01);
/// A starter's solenoid pulls in with both of its windings, and holds with one.
const SOLENOID: (f64, f64) = (4.0, 0.1);

/// A contact makes so many times its rating for an instant: common practice, no source.
const MAKES: f64 = 4.0;
/// From so many times that on it surely welds: likewise.
const SURELY: f64 = 1.5;

/// More than this share of the supply between battery and load is too much: common practice, no source.
const MOST_DROP: f64 = 0.05;

/// What the fuse lets pass is within what the numbers are good for: the insulation stores heat too, and a table of currents
/// differs from the next by some per cent.
pub(super) const HAIR: f64 = 1.17;
/// Up to so much the insulation ages, and does not melt.
pub const AGES: f64 = 1.28;

/// What a circuit feeds, by how it starts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Consumer {
    /// A motor, which stands still at first.
    Motor,
    /// Lamps, which are cold at first.
    Lamps,
    /// The solenoid of a starter.
    Solenoid,
    /// What draws no more at first.
    Steady,
}

impl Consumer {
    /// The inrush of what draws so much while it runs, and how long it would last at its peak: common practice, no source.
    pub fn inrush(self, runs: Current) -> Option<(Current, Time)> {
        let (times, lasts) = match self {
            Self::Motor => MOTOR,
            Self::Lamps => LAMP,
            Self::Solenoid => SOLENOID,
            Self::Steady => return None,
        };
        Some((runs * times, seconds(lasts)))
    }
}

/// A circuit: a fuse, a contact, a wire, and what they feed.
#[derive(Clone, Debug, PartialEq)]
pub struct CircuitInputs {
    /// What each part of it draws for long, RMS; nothing where one is not known.
    pub draws: Option<Vec<Current>>,
    /// How most of it starts.
    pub consumer: Consumer,
    /// Its inrush, where typed.
    pub inrush: Option<Current>,
    /// Rating of the fuse.
    pub fuse: Option<Current>,
    /// Rating of the contact.
    pub contact: Option<Current>,
    /// The thinnest wire behind the fuse.
    pub area: Option<Area>,
    /// How many wires of that size share what it draws, side by side; a fault finds one of them.
    pub shared_by: u32,
    /// The length of the lead, one way.
    pub length: Option<Length>,
    /// The length of its ground wire, where that is known: the rest of the way back is the body.
    pub back: Option<Length>,
    /// How the wire is laid.
    pub laid: LaidWire,
    /// What the battery has, between rest and charging.
    pub supply: Band<Voltage>,
    /// What it runs at, at the most: the battery while charging, or of a starter while cranking.
    pub runs_at: Voltage,
    /// The hottest that fuse and wire get.
    pub hot: Temperature,
}

/// What overheats before the fuse blows, and how surely.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Exposed {
    /// The wire melts.
    Wire,
    /// The wire ages, or is spared by what was left out on the safe side, or by what others in its bundle leave it.
    WireBarely,
    /// A short at the far end never blows it.
    FarEnd,
    /// The contact.
    Contact,
}

/// What comes of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CircuitAnswer {
    /// What it draws for long, RMS.
    pub draws: Option<Current>,
    /// What it draws at first, and how long that would last at its peak.
    pub inrush: Option<(Current, Time)>,
    /// The least rating of fuse and contact.
    pub least: Option<Current>,
    /// Fuse and wire against each other, where something is exposed.
    pub protection: Option<Protection>,
    /// What overheats before the fuse blows.
    pub exposed: Option<Exposed>,
    /// The drop out and back, and its share of what it runs at.
    pub drop: Option<(Voltage, Ratio)>,
}

/// Fuse and wire that can be bought.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FittedSet {
    /// The fuse.
    pub fuse: Current,
    /// The wire.
    pub area: Area,
}

/// Battery, leads and a contact before the fuse: common practice, no source.
fn before() -> Band<Resistance> {
    Band { low: ohms(0.01), nominal: ohms(0.03), high: ohms(0.06) }
}

impl CircuitInputs {
    fn run(&self, fuse: Current, area: Area) -> FusedRun {
        let length = self.length.unwrap_or_else(|| Length::from_base(0.0));
        FusedRun {
            fuse,
            wire: LaidWire { area, ..self.laid },
            length,
            back: self.way_back(length, area),
            source: self.supply,
            before: before(),
        }
    }

    /// The way back of a lead: its ground wire and the body, or a wire as long and as thick.
    fn way_back(&self, length: Length, area: Area) -> Resistance {
        match self.back {
            Some(ground) => copper::wire_at_most(ground, area, self.hot) + ohms(BODY_OHM),
            None => copper::wire_at_most(length, area, self.hot),
        }
    }

    /// What overheats before this fuse blows, the graver first.
    pub fn exposed(&self, fuse: Current) -> Option<Exposed> {
        let of_wire = self.area.and_then(|area| self.wire_exposed(fuse, area));
        let over = |rating: Current| fuse.base() > rating.base() * (1.0 + 1e-9);
        let of_contact = self.contact.filter(|it| over(*it)).map(|_| Exposed::Contact);
        match of_wire {
            Some(Exposed::WireBarely) | None => of_contact.or(of_wire),
            graver => graver,
        }
    }

    fn wire_exposed(&self, fuse: Current, area: Area) -> Option<Exposed> {
        let is_lost = |times: f64| self.run(fuse / times, area).is_lost();
        // at the fault that is worst, with what the numbers are good for; in a bundle one wire is at fault, and the others carry what
        // they feed, not all that they could: common practice, no source. What burns beside them alone is not sure to
        let mut alone = self.run(fuse / AGES, area);
        alone.wire.bundled = 1;
        if alone.is_lost() {
            return Some(Exposed::Wire);
        }
        if !self.run(fuse, area).is_blown() {
            return Some(Exposed::FarEnd);
        }
        is_lost(HAIR).then_some(Exposed::WireBarely)
    }

    /// What it draws, as a sum of its parts.
    pub fn draws_step(&self) -> Option<Step> {
        let (each, sum) = (self.draws.as_ref()?, self.sum()?);
        Some(match each.as_slice() {
            [one] => step(&ALONE, &[("I_1", one.show())], sum),
            [one, other, ..] => step(&TOTAL, &[("I_1", one.show()), ("I_2", other.show())], sum),
            [] => step(&TOTAL, &[], sum),
        })
    }

    /// Its average, where so much of its RMS is left out as some of it is pulsed.
    pub fn average_step(&self, pulsed: Current) -> Option<Step> {
        let sum = self.sum().filter(|_| pulsed.base() > 0.0)?;
        let mean = amperes(sum.base() - pulsed.base());
        Some(step(&AVERAGE, &[("I", sum.show()), ("I_pulsed", pulsed.show())], mean))
    }

    fn sum(&self) -> Option<Current> {
        let each = self.draws.as_ref()?;
        Some(amperes(each.iter().map(|it| it.base()).sum()))
    }

    /// Whether a wire of this size gets too hot by what it feeds, or loses too much.
    pub fn is_too_thin(&self, area: Area) -> bool {
        let with = Self { area: Some(area), ..self.clone() };
        let draws = self.sum();
        let bears = LaidWire { area, ..self.laid }.bears();
        draws.is_some_and(|draws| self.in_wire(draws) > bears)
            || with.drop(draws).is_some_and(|(_, part)| is_too_much(part))
    }

    /// The least rating of its fuse.
    pub fn least_step(&self) -> Option<Step> {
        let draws = self.sum()?;
        Some(step(&LEAST, &[("I", draws.show())], draws / fuses::LASTING))
    }

    /// What it takes at first.
    pub fn inrush_step(&self) -> Option<Step> {
        let (current, _) = self.first_moment()?;
        Some(match (self.inrush, self.sum()) {
            (None, Some(draws)) => {
                let times = share(current.base() / draws.base().max(f64::MIN_POSITIVE));
                step(&INRUSH, &[("k", times.show()), ("I", draws.show())], current)
            }
            _ => step(&TYPED, &[("I_typed", current.show())], current),
        })
    }

    /// What it takes at first, and how long that would last at its peak.
    fn first_moment(&self) -> Option<(Current, Time)> {
        let lasts = seconds(match self.consumer {
            Consumer::Lamps => LAMP.1,
            Consumer::Solenoid => SOLENOID.1,
            Consumer::Motor | Consumer::Steady => MOTOR.1,
        });
        if let Some(typed) = self.inrush {
            return Some((typed, lasts));
        }
        let (free, _) = self.sum().and_then(|draws| self.consumer.inrush(draws))?;
        // battery and wire let no more through
        let wire = self
            .length
            .zip(self.area)
            .map_or(0.0, |(length, area)| 2.0 * copper::wire(length, area, self.hot).base());
        let supply = self.supply.high.base().max(f64::MIN_POSITIVE);
        let ohm = supply / free.base().max(f64::MIN_POSITIVE) + wire + before().nominal.base();
        Some((amperes(supply / ohm), lasts))
    }

    /// What comes of it.
    pub fn answer(&self) -> CircuitAnswer {
        let draws = self.sum();
        let exposed = self.fuse.and_then(|fuse| self.exposed(fuse));
        CircuitAnswer {
            draws,
            inrush: self.first_moment(),
            least: draws.map(|draws| draws / fuses::LASTING),
            protection: exposed.and_then(|_| self.protection()),
            exposed,
            drop: self.drop(draws),
        }
    }

    /// Fuse and wire against each other, where both are known.
    pub fn protection(&self) -> Option<Protection> {
        self.fuse.zip(self.area).map(|(fuse, area)| self.with(FittedSet { fuse, area }))
    }

    /// The same of another fuse and another wire.
    pub fn with(&self, set: FittedSet) -> Protection {
        short::check(&self.run(set.fuse, set.area))
    }

    fn drop(&self, draws: Option<Current>) -> Option<(Voltage, Ratio)> {
        let (length, area) = (self.length?, self.area?);
        let loop_of = copper::wire_at_most(length, area, self.hot) + self.way_back(length, area);
        let drop: Voltage = Measure::from_base(draws?.base() * loop_of.base());
        Some((drop, share(drop.base() / self.runs_at.base().max(1e-9))))
    }

    /// How the drop was found.
    pub fn drop_steps(&self) -> Vec<Step> {
        let (Some(length), Some(area), Some(draws)) = (self.length, self.area, self.sum()) else {
            return Vec::new();
        };
        let wire = copper::wire_at_most(length, area, self.hot);
        let shown = [("l", length.show()), ("A", area.show()), ("T", self.hot.show())];
        let out = step(&copper::WIRE_AT_MOST, &shown, wire);
        let back = self.way_back(length, area);
        let drop: Voltage = Measure::from_base(draws.base() * (wire + back).base());
        let (current, wire) = (("I", draws.show()), ("R_w", wire.show()));
        let Some(ground) = self.back else {
            return vec![out, step(&DROP, &[current, wire], drop)];
        };
        let shown = [("l", ground.show()), ("A", area.show()), ("T", self.hot.show())];
        let ground = copper::wire_at_most(ground, area, self.hot);
        let body = ("R_body", ohms(BODY_OHM).show());
        vec![
            out,
            step(&copper::WIRE_AT_MOST, &shown, ground),
            step(&DROP_BACK, &[current, wire, ("R_b", ground.show()), body], drop),
        ]
    }

    /// Whether something of it has still to be chosen, or is better chosen otherwise.
    pub fn is_to_fit(&self, answer: &CircuitAnswer) -> bool {
        let is_small = |fuse: Current| answer.least.is_some_and(|least| fuse < least);
        let (fuse, area) = (self.fuse, self.area);
        answer.exposed.is_some() || area.is_none() || fuse.is_none_or(is_small)
    }

    /// Whether a fuse bears its inrush, whatever its make.
    pub fn is_started_by(&self, fuse: Current, inrush: Option<(Current, Time)>) -> bool {
        inrush.is_none_or(|(current, lasts)| blow::shortest(fuse, current) >= lasts)
    }

    /// The smallest fuse that carries it for long and as it starts; none where it is not known what it draws.
    pub fn fuse_for(&self, answer: &CircuitAnswer) -> Option<Current> {
        let least = answer.least?;
        let bears = |it: &Current| it.base() >= least.base() * (1.0 - 1e-9);
        let all = fuses::RATINGS_A.into_iter().filter(|rating| *rating >= SMALLEST_A).map(amperes);
        all.into_iter().find(|it| bears(it) && self.is_started_by(*it, answer.inrush))
    }

    /// The smallest fuse that carries it for long and as it starts, and the thinnest wire that it protects, that drops little
    /// and stays cool; none where there is none, or where it is not known what it draws. A contact that is typed is no
    /// smaller than the fuse.
    pub fn fitted(&self, answer: &CircuitAnswer) -> Option<FittedSet> {
        let fuse = self.fuse_for(answer)?;
        if self.contact.is_some_and(|rating| fuse > rating) {
            return None;
        }
        self.wire_for(fuse, answer.draws).map(|area| FittedSet { fuse, area })
    }

    /// What of it flows in each wire, of so much in all.
    pub fn in_wire(&self, draws: Current) -> Current {
        draws / f64::from(self.shared_by.max(1))
    }

    /// The thinnest usual wire that carries what it feeds, loses little of the supply, and is protected by this fuse.
    pub fn wire_for(&self, fuse: Current, draws: Option<Current>) -> Option<Area> {
        bought().find(|area| {
            let with = Self { area: Some(*area), ..self.clone() };
            let drop = with.drop(draws);
            draws.is_none_or(|draws| {
                LaidWire { area: *area, ..self.laid }.bears() >= self.in_wire(draws)
            }) && drop.is_none_or(|(_, part)| !is_too_much(part))
                && short::is_protected(&self.run(fuse, *area))
        })
    }

    /// The thinnest usual wire that this fuse leaves unexposed, and that carries what it feeds.
    pub fn unexposed(&self, fuse: Current) -> Option<Area> {
        let mut areas = BOUGHT_MM2.into_iter().map(|size| Area::from_base(size * 1e-6));
        let draws = self.sum();
        areas.find(|area| {
            let with = Self { area: Some(*area), ..self.clone() };
            let bears = LaidWire { area: *area, ..self.laid }.bears();
            draws.is_none_or(|draws| bears >= draws) && with.exposed(fuse).is_none()
        })
    }

    /// Whether this fuse is no larger than what the wire carries, within what the numbers are good for: the trade's own rule,
    /// common practice, no source.
    pub fn is_fused_by_rule(&self, fuse: Current) -> bool {
        let carries = |area| LaidWire { area, ..self.laid }.bears();
        self.area.is_some_and(|area| fuse <= carries(area) * HAIR)
    }

    /// Whether the next smaller fuse would burn the wire as well.
    pub fn is_burnt_by_smaller(&self, fuse: Current) -> bool {
        let mut smaller = fuses::RATINGS_A.into_iter().rev().map(amperes);
        smaller.find(|it| *it < fuse).is_some_and(|it| self.exposed(it) == Some(Exposed::Wire))
    }

    /// The largest fuse that leaves neither wire nor contact exposed.
    pub fn largest_fuse(&self) -> Option<Current> {
        let all = fuses::RATINGS_A.into_iter().rev().map(amperes);
        all.into_iter().find(|fuse| self.exposed(*fuse).is_none())
    }
}

/// Smaller fuses are seldom bought for a feed: common practice, no source.
const SMALLEST_A: f64 = 3.0;

/// Sizes on most shelves, in mm², IEC 60228; thinner ones are seldom bought for a feed.
pub const BOUGHT_MM2: [f64; 14] =
    [0.5, 0.75, 1.0, 1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0, 70.0, 95.0];

/// The same, the thinnest first.
pub fn bought() -> impl Iterator<Item = Area> {
    BOUGHT_MM2.into_iter().map(|size| Area::from_base(size * 1e-6))
}

/// Whether so much of the supply is lost that it should not be.
pub fn is_too_much(part: Ratio) -> bool {
    part.base() > MOST_DROP
}

/// The most that is lost between battery and load.
pub fn most_drop() -> Ratio {
    share(MOST_DROP)
}

/// Whether what is typed of an inrush surely welds a contact of this rating, beyond what a good one makes: common practice, no source.
pub fn surely_welds(inrush: Current, rating: Current) -> bool {
    inrush.base() > makes(rating).base() * SURELY
}

/// What a contact of this rating makes for an instant.
pub fn makes(rating: Current) -> Current {
    rating * MAKES
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        quantity::{celsius, metres, volts},
        supply::laid::Insulation,
    };

    fn mm2(size: f64) -> Area {
        Area::from_base(size * 1e-6)
    }

    fn circuit(draws: f64, fuse: f64, area: f64, length: f64) -> CircuitInputs {
        CircuitInputs {
            draws: Some(vec![amperes(draws)]),
            consumer: Consumer::Motor,
            inrush: None,
            fuse: Some(amperes(fuse)),
            contact: Some(amperes(40.0)),
            area: Some(mm2(area)),
            shared_by: 1,
            length: Some(metres(length)),
            back: None,
            laid: LaidWire {
                area: mm2(area),
                insulation: Insulation::B,
                ambient: celsius(20.0),
                bundled: 1,
            },
            supply: Band { low: volts(12.0), nominal: volts(12.6), high: volts(14.4) },
            runs_at: volts(14.8),
            hot: celsius(20.0),
        }
    }

    /// By hand: 1.16 × 3 m / (58 × 2.5 mm²) = 24 mΩ, out and back 48 mΩ; 10 A lose 0.48 V of 14.4 V, 3.3 %. 10 A / 75 % = 13.3 A.
    #[test]
    fn a_pump_of_ten_amperes_takes_fifteen_and_two_and_a_half() {
        let circuit = circuit(10.0, 15.0, 2.5, 3.0);
        let found = circuit.answer();
        let (drop, part) = found.drop.expect("all is known");
        assert!((drop.base() - 0.48).abs() < 1e-3, "{drop:?}");
        assert!((part.base() - 0.0333).abs() < 1e-3, "{part:?}");
        assert!((found.least.expect("known").base() - 13.333).abs() < 1e-2);
        assert_eq!(found.exposed, None);
        let fitted = circuit.fitted(&found).expect("there is one");
        assert_eq!((fitted.fuse, fitted.area), (amperes(15.0), mm2(2.5)), "1.5 mm² loses 5.6 %");
    }

    /// By hand: 1.16 × 6 m / (58 × 4 mm²) = 30 mΩ out, 0.5 m of it back 2.5 mΩ, 5 mΩ of body: 15 A lose 0.5625 V.
    #[test]
    fn a_short_ground_wire_is_the_way_back() {
        let ground = |back| CircuitInputs { back, ..circuit(15.0, 25.0, 4.0, 6.0) };
        let lost = |it: &CircuitInputs| it.answer().drop.expect("all is known").0.base();
        assert!((lost(&ground(None)) - 0.9).abs() < 1e-3);
        let short = ground(Some(metres(0.5)));
        assert!((lost(&short) - 0.5625).abs() < 1e-3);
        assert_eq!(short.drop_steps().len(), 3);
    }

    #[test]
    fn a_thin_wire_behind_a_big_fuse_melts_and_a_long_one_never_blows_it() {
        assert_eq!(circuit(10.0, 40.0, 1.0, 3.0).answer().exposed, Some(Exposed::Wire));
        assert_eq!(circuit(10.0, 30.0, 2.5, 3.0).answer().exposed, Some(Exposed::WireBarely));
        // 20 m of 1 mm² out and back: 0.8 ohm and more when hot, 12 V give 13 A
        assert_eq!(circuit(2.0, 10.0, 1.0, 20.0).answer().exposed, Some(Exposed::FarEnd));
        assert_eq!(circuit(2.0, 10.0, 1.0, 3.0).answer().exposed, None);
    }

    #[test]
    fn a_fuse_larger_than_the_contact_leaves_it_exposed() {
        let large = CircuitInputs { contact: Some(amperes(20.0)), ..circuit(10.0, 25.0, 4.0, 2.0) };
        assert_eq!(large.answer().exposed, Some(Exposed::Contact));
        assert_eq!(large.largest_fuse(), Some(amperes(20.0)));
        assert_eq!(large.fitted(&large.answer()).map(|it| it.fuse), Some(amperes(15.0)));
    }

    #[test]
    fn what_is_offered_leaves_nothing_exposed() {
        for draws in [0.5, 3.0, 8.0, 14.0, 22.0, 29.0] {
            for length in [0.5, 3.0, 8.0] {
                let circuit = circuit(draws, 10.0, 1.0, length);
                let Some(set) = circuit.fitted(&circuit.answer()) else { panic!("{draws} A") };
                let fuse = Some(set.fuse);
                let with = CircuitInputs { fuse, area: Some(set.area), ..circuit.clone() };
                let found = with.answer();
                assert_eq!(found.exposed, None, "{draws} A over {length} m: {set:?}");
                assert!(
                    found.drop.is_some_and(|(_, part)| !is_too_much(part)),
                    "{draws} A: {set:?}"
                );
            }
        }
    }
}
