//! Starts that go otherwise, and the spark that comes with power: what is told of them.

use super::{advice::Advice, search::StartSearch};
use crate::{
    cranking::{CrankingAnswer, CrankingInputs, Event, Happening, Noise},
    fields,
    fields::cranking::PowerUp,
    finding::{Finding, Severity},
    quantity::{Holds, Measure, RotationalSpeed, Value, number},
    questions::cranking::words,
    read::Known,
    report::{Row, Table, Tone},
    say,
    working::{Formula, Step, step},
};

const POWERED: Formula = Formula {
    symbols: "t_powered = t_closed",
    source: "simulated tooth by tooth: how long the contact is closed while the engine is stopped or turns back, in the worst case",
};
const FALSE_EDGES: Formula = Formula {
    symbols: "n_above = 2 · n_rock",
    source: "an edge midway between two teeth halves the time between edges; simulated at the speed of a rocking engine",
};

/// What the findings and the table are made from.
pub(super) struct Otherwise {
    events: Vec<Event>,
    noise: Option<Noise>,
}

impl Otherwise {
    pub(super) fn new(search: StartSearch<'_>) -> Self {
        Self { events: search.events(), noise: search.noise() }
    }

    fn of(&self, happening: Happening) -> Option<&Event> {
        self.events.iter().find(|event| event.happening == happening)
    }

    /// Whether no false edges are told of.
    pub(super) fn is_quiet(&self) -> bool {
        self.noise.and_then(|it| it.edges).is_none_or(|edges| edges == 0)
    }

    /// One row for each, and one for false edges; none without a threshold, nor where they were not tried.
    pub(super) fn table(&self, inputs: &CrankingInputs) -> Option<Table> {
        let mut rows: Vec<_> = self.events.iter().map(row).collect();
        let edges = self.noise?;
        let told = match edges.edges {
            None => "no number pulls it in".to_owned(),
            Some(0) => "it pulls in without any".to_owned(),
            Some(1) => "1 pulls it in".to_owned(),
            Some(count) => format!("{count} in a row pull it in"),
        };
        let burst = format!("a burst of {} pulls it in at any threshold", edges.burst);
        let cells = ["false edges while it rocks", &told, &burst, "none"];
        rows.push(Row {
            cells: cells.into_iter().map(Value::text).collect(),
            tone: edges.edges.map(|_| Tone::Doubtful),
        });
        let values = [("n_rock", inputs.rocking.high.show())];
        let mut working = self.working();
        working.push(step(&FALSE_EDGES, &values, edges.above));
        Some(Table {
            caption: say!(words::relays::OTHERWISE),
            columns: vec![
                say!(words::relays::COLUMN_OTHERWISE),
                say!(words::COLUMN_POWER),
                say!(words::COLUMN_OPENINGS),
                say!(words::relays::COLUMN_POWERED),
            ],
            rows,
            working,
        })
    }

    fn working(&self) -> Vec<Step> {
        let powered = self.events.iter().map(|it| (it, it.powered));
        powered.map(|(_, it)| step(&POWERED, &[("t_closed", it.show())], it)).collect()
    }

    /// What the fitter should know of them.
    pub(super) fn findings(
        &self,
        known: &Known,
        inputs: &CrankingInputs,
        answer: &CrankingAnswer,
        advice: Option<Advice>,
    ) -> Vec<Finding> {
        let mut findings = Vec::new();
        findings.extend(self.slow_turn(known, answer));
        findings.extend(self.kick_back(inputs));
        findings.extend(self.sticks(inputs));
        findings.extend(
            inputs.threshold.zip(self.noise).and_then(|(threshold, found)| {
                false_edges(known, threshold, found, answer, advice)
            }),
        );
        findings.extend(spark_at_power(known, answer));
        findings
    }

    fn slow_turn(&self, known: &Known, answer: &CrankingAnswer) -> Option<Finding> {
        let event = self.of(Happening::SlowFirstTurn).filter(|it| it.openings > 0)?;
        // what opens in any start is told as such
        if answer.corners.iter().any(|corner| corner.openings.count > 0 || !corner.closes) {
            return None;
        }
        let message = say!(words::relays::SLOW_FIRST_TURN, openings = event.openings);
        let holds = Holds::AtSome(event.opens_at.clone());
        Some(Finding::new(Severity::Doubt, known.keys.release, message).holding(holds))
    }

    fn kick_back(&self, inputs: &CrankingInputs) -> Option<Finding> {
        let event = self
            .of(Happening::KickBack)
            .filter(|_| inputs.kick_back > crate::read::cranking::usual_kick_back())?;
        let message = say!(
            words::relays::KICK_BACK,
            back = inputs.kick_back,
            speed = event.fastest_back,
            teeth = event.teeth_too_many,
            powered = event.powered
        );
        let severity = if event.powered.base() > 0.0 { Severity::Doubt } else { Severity::Note };
        Some(Finding::new(severity, fields::cranking::KICK_BACK, message))
    }

    fn sticks(&self, inputs: &CrankingInputs) -> Option<Finding> {
        let event = self
            .of(Happening::Sticks)
            .filter(|_| inputs.stick > crate::read::cranking::usual_stick())?;
        let message = say!(
            words::relays::STICKS,
            stands = inputs.stick,
            powered = event.powered,
            power = event.power
        );
        Some(Finding::new(Severity::Note, fields::cranking::STICK, message))
    }
}

fn row(event: &Event) -> Row {
    let name = match event.happening {
        Happening::SlowFirstTurn => "slow first turn",
        Happening::KickBack => "kicks back at the first compression",
        Happening::Sticks => "starter sticks after a turn",
    };
    let power = if event.closes { event.power.show() } else { Value::text("never") };
    let cells = vec![Value::text(name), power, event.openings.into(), event.powered.show()];
    Row { cells, tone: (!event.closes).then_some(Tone::Bad) }
}

fn false_edges(
    known: &Known,
    threshold: RotationalSpeed,
    found: Noise,
    answer: &CrankingAnswer,
    advice: Option<Advice>,
) -> Option<Finding> {
    let edges = found.edges.filter(|edges| *edges > 0)?;
    let message = say!(
        words::relays::FALSE_EDGES,
        edges = edges,
        threshold = threshold,
        above = found.above,
        burst = found.burst
    );
    let higher = advice.filter(|it| it.threshold > found.above).map(|it| it.remedy(known));
    let in_band = answer.works.is_some_and(|it| it.high > found.above.base());
    let filter = (higher.is_none() || !in_band).then(|| say!(words::relays::FILTER_EDGES));
    let finding = Finding::new(Severity::Doubt, known.keys.threshold, message);
    Some(finding.cured_by(higher.into_iter().chain(filter)))
}

/// A spark as the relay closes, wherever the engine then stands.
fn spark_at_power(known: &Known, answer: &CrankingAnswer) -> Option<Finding> {
    if known.power_up != Some(PowerUp::Spark) {
        return None;
    }
    let (all, compressing) = answer
        .corners
        .iter()
        .fold((0, 0), |sum, corner| (sum.0 + corner.closings.0, sum.1 + corner.closings.1));
    let path = fields::cranking::POWER_UP;
    let message = if all == 0 {
        say!(words::relays::SPARK_AT_POWER)
    } else {
        #[expect(clippy::cast_precision_loss, reason = "a few hundred starts")]
        let percent = number((100.0 * compressing as f64 / all as f64).round());
        say!(words::relays::SPARK_IN_COMPRESSION, share = format!("{percent}%"), starts = all)
    };
    let cures = [say!(words::relays::OTHER_IGNITER), say!(words::relays::POWER_BEFORE)];
    Some(Finding::new(Severity::Danger, path, message).cured_by(cures))
}
