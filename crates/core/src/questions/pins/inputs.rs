//! The sensors as what has to be placed, the controller's inputs as places.

use super::{
    judge::{MOST_COMPETING, listed, shortened, some_of},
    words,
};
use crate::{
    assignment::{
        Cost, PlacedJob, PlacedJobs, Placement, PlacementSearch, Placing, competing, placed,
    },
    budget::Budget,
    car::Car,
    fields::{
        inputs::{InputPull, InputTakes},
        sensors as fields,
    },
    finding::{Finding, Findings, Severity},
    message::{Edit, Message},
    quantity::Value,
    questions::sensors::{
        judge::{needs_pull_up, read_by},
        read::{PlannedSensor, Sensing, SensorInput},
    },
    report::{Answer, Tone},
    say,
};

/// A sensor that takes an input, or with its second track two.
struct InputJob<'a> {
    /// Its record.
    at: usize,
    sensor: &'a PlannedSensor,
    now: Option<Vec<usize>>,
    wanted: usize,
}

/// The answer; nothing where no sensor or no input is typed.
pub(super) fn answer(car: &Car<'_>, budget: &Budget, findings: &mut Findings) -> Option<Answer> {
    let sensing = car.sensing.as_ref()?;
    let jobs = jobs(sensing);
    if jobs.is_empty() || sensing.inputs.is_empty() {
        return None;
    }
    let placement = Placement {
        jobs: jobs.iter().map(|job| as_placed(sensing, job)).collect(),
        places: sensing.inputs.len(),
        banks: Vec::new(),
    };
    let mut answer = match placed(&placement, budget) {
        PlacementSearch::Best(found) => of_best(sensing, &jobs, &placement, &found),
        PlacementSearch::Impossible => impossible(sensing, &jobs, (&placement, budget), findings)?,
        PlacementSearch::Unsearched(_) => {
            Answer::new("pins.sensors", Tone::Open, say!(words::OPEN_UNSEARCHED))
        }
    };
    answer.title = Some(say!(words::TITLE_INPUTS));
    Some(answer)
}

/// Each sensor of which it is known what it is.
fn jobs(sensing: &Sensing) -> Vec<InputJob<'_>> {
    let each = sensing.sensors.iter().enumerate();
    let known = each.filter(|(_, it)| it.kind.is_some() && !it.is_unreadable);
    known
        .map(|(at, sensor)| {
            let has_second = sensor.second.is_some() || sensor.on.second_input.is_some();
            let wanted = if has_second { 2 } else { 1 };
            let now = [sensor.on.input, sensor.on.second_input.filter(|_| has_second)];
            let now: Vec<usize> = now.into_iter().flatten().collect();
            InputJob { at, sensor, now: (now.len() == wanted).then_some(now), wanted }
        })
        .collect()
}

/// Whether it reads what the sensor gives; a pull-up where it needs one, and none where that would only pull at it.
fn suits(sensor: &PlannedSensor, input: &SensorInput, is_now: bool) -> bool {
    let reads = |takes: InputTakes| sensor.kind.is_some_and(|it| read_by(it).contains(&takes));
    let is_pulled_right = match input.pull {
        Some(InputPull::Nothing) => !needs_pull_up(sensor),
        Some(InputPull::Up) => needs_pull_up(sensor) || is_now || gives_level(sensor),
        None => true,
    };
    input.takes.is_some_and(reads) && is_pulled_right
}

/// A level bears a pull-up.
fn gives_level(sensor: &PlannedSensor) -> bool {
    use crate::fields::sensors::SensorType::{Hall, Knock, Switch};
    matches!(sensor.kind, Some(Hall | Knock | Switch))
}

fn as_placed(sensing: &Sensing, job: &InputJob<'_>) -> PlacedJob {
    let inputs = sensing.inputs.iter().enumerate();
    let is_now = |at: usize| job.now.as_ref().is_some_and(|it| it.contains(&at));
    let suiting: Vec<usize> =
        inputs.filter(|(at, it)| suits(job.sensor, it, is_now(*at))).map(|(at, _)| at).collect();
    let placing = |places: Vec<usize>| {
        let is_moved = job.now.as_ref().is_some_and(|now| *now != places);
        let each = places.iter().filter_map(|at| sensing.inputs.get(*at));
        let ability: u32 = each.map(ability).sum();
        Placing { places, cost: Cost::new([u32::from(is_moved), ability, 0]) }
    };
    let placings = if job.wanted == 1 {
        suiting.iter().map(|at| placing(vec![*at])).collect()
    } else {
        let pairs = suiting.iter().enumerate().flat_map(|(place, one)| {
            suiting.iter().skip(place + 1).map(move |other| [*one, *other])
        });
        let turned = |[one, other]: [usize; 2]| {
            let is_turned = job.now.as_deref() == Some(&[other, one]);
            placing(if is_turned { vec![other, one] } else { vec![one, other] })
        };
        pairs.map(turned).collect()
    };
    PlacedJob { placings, draw: 0, pace: None }
}

/// What reads more steps, or a voltage rather than a level, is left for what needs it.
fn ability(input: &SensorInput) -> u32 {
    let reads = match input.takes {
        Some(InputTakes::Digital) | None => 0,
        Some(InputTakes::Analogue) => 1,
        Some(InputTakes::Knock) => 2,
    };
    reads * 100 + input.bits.unwrap_or(10)
}

fn of_best(
    sensing: &Sensing,
    jobs: &[InputJob<'_>],
    placement: &Placement,
    found: &PlacedJobs,
) -> Answer {
    let (mut list, mut edits) = (Vec::new(), Vec::new());
    let (mut blank, mut moved) = (0_usize, 0_usize);
    let mut used: Vec<usize> = Vec::new();
    for (at, job) in jobs.iter().enumerate() {
        let placing = found.chosen.get(at).and_then(|it| placement.jobs.get(at)?.placings.get(*it));
        let Some(placing) = placing else { continue };
        used.extend(&placing.places);
        if job.now.as_ref() == Some(&placing.places) {
            continue;
        }
        if job.now.is_none() {
            blank += 1;
        } else {
            moved += 1;
        }
        let names: Vec<String> = placing.places.iter().map(|it| name_of(sensing, *it)).collect();
        let (load, output) = (job.sensor.name.clone(), listed(&names));
        list.push([load, say!(words::PLACE, output = output).into_text()].join(" "));
        let keys = [fields::INPUT.at(job.at), fields::SECOND_INPUT.at(job.at)];
        let each = keys.into_iter().zip(&names);
        edits.extend(each.map(|(key, name)| -> Edit { key.edit(name.clone()) }));
    }
    let all = jobs.len();
    let (tone, verdict) = match (blank, moved) {
        (1.., _) => (Tone::Open, say!(words::OPEN_PLACE_INPUTS, n = blank, all = all)),
        (0, 1..) => (Tone::Open, say!(words::OPEN_MOVE_INPUTS, n = moved, all = all)),
        (0, 0) => (Tone::Good, say!(words::GOOD_INPUTS, n = all)),
    };
    let mut answer = Answer::new("pins.sensors", tone, verdict);
    let free = (0..sensing.inputs.len()).filter(|it| !used.contains(it));
    let free: Vec<String> = free.map(|it| name_of(sensing, it)).collect();
    answer.why = Some(if free.is_empty() {
        say!(words::WHY_NO_SPARE)
    } else {
        say!(words::WHY_SPARE, list = shortened(&free))
    });
    if !list.is_empty() {
        answer.to_do.push(say!(words::DO_PLACE, list = listed(&list)).done_by(edits));
    }
    answer
}

fn name_of(sensing: &Sensing, input: usize) -> String {
    sensing.inputs.get(input).map_or_else(String::new, |it| it.name.clone())
}

/// Some are too many for the inputs that suit them; nothing while it isn't known what each input reads.
fn impossible(
    sensing: &Sensing,
    jobs: &[InputJob<'_>],
    (placement, budget): (&Placement, &Budget),
    findings: &mut Findings,
) -> Option<Answer> {
    if let Some(unknown) = sensing.inputs.iter().find(|it| it.takes.is_none()) {
        let verdict = say!(words::OPEN_TAKES, input = unknown.name.clone());
        return Some(Answer::new("pins.sensors", Tone::Open, verdict));
    }
    let set = competing(placement, budget)?;
    let in_set: Vec<&InputJob<'_>> = set.iter().filter_map(|at| jobs.get(*at)).collect();
    let names: Vec<String> = in_set.iter().map(|it| it.sensor.name.clone()).collect();
    let of_set = set.iter().filter_map(|at| placement.jobs.get(*at));
    let mut open_to: Vec<usize> =
        of_set.flat_map(|it| it.placings.iter().flat_map(|it| it.places.clone())).collect();
    open_to.sort_unstable();
    open_to.dedup();
    let [in_verdict, in_finding] = MOST_COMPETING.map(|most| some_of(&names, most));
    let verdict = if open_to.is_empty() {
        say!(words::NO_INPUT_SUITS, list = in_verdict)
    } else {
        say!(words::TOO_FEW_OF_INPUTS, list = in_verdict)
    };
    // what is on an input that can't read it is told with the sensor
    let Some(blank) = in_set.iter().find(|it| it.sensor.on.input.is_none()) else {
        return Some(Answer::new("pins.sensors", Tone::Open, verdict));
    };
    let message = if open_to.is_empty() {
        say!(words::NO_INPUT, list = in_finding)
    } else {
        let wanted: usize = in_set.iter().map(|it| it.wanted).sum();
        let short = wanted.saturating_sub(open_to.len()).max(1);
        say!(words::TOO_FEW_INPUTS, list = in_finding, m = named(sensing, &open_to), short = short)
    };
    let mut answer = Answer::new("pins.sensors", Tone::Bad, verdict);
    let cures = vec![larger(blank.sensor)];
    answer.to_do.clone_from(&cures);
    let key = fields::INPUT.at(blank.at);
    findings.push(Finding::new(Severity::Fault, key, message).cured_by(cures));
    Some(answer)
}

fn named(sensing: &Sensing, inputs: &[usize]) -> Value {
    let names: Vec<String> = inputs.iter().map(|it| name_of(sensing, *it)).collect();
    let names = shortened(&names);
    Value::text(
        match inputs.len() {
            1 => say!(words::INPUT, names = names),
            n => say!(words::INPUTS, n = n, names = names),
        }
        .into_text(),
    )
}

/// What an input more would have to be like.
fn larger(sensor: &PlannedSensor) -> Message {
    let reads = sensor.kind.map_or(&[][..], read_by).first();
    match reads {
        Some(InputTakes::Digital) => say!(words::DO_INPUT_DIGITAL),
        Some(InputTakes::Knock) => say!(words::DO_INPUT_KNOCK),
        _ if needs_pull_up(sensor) => say!(words::DO_INPUT_PULLED),
        _ => say!(words::DO_INPUT_ANALOGUE),
    }
}
