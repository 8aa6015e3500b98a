//! Every key state of one load on its output, at every corner.

use super::{
    Commanded, Contact, FarEnd, KeyState, Load, LoadFlow, LoadKind, MeterReading, Operating, Phase,
    PinPart, Point, Solver, Surroundings, Wiring, corner, meter,
};
use crate::quantity::{Band, Current, Measure, Voltage};

/// A load on its output in every key state.
#[derive(Clone, Debug, PartialEq)]
pub struct Rest {
    /// The output and all its loads.
    pub wiring: Wiring,
    /// The number of the load that is asked about.
    pub subject: usize,
    /// The key states, in order.
    pub states: Vec<StateRest>,
}

/// A load in one key state.
#[derive(Clone, Debug, PartialEq)]
pub struct StateRest {
    /// The state.
    pub state: KeyState,
    /// With everything as it is meant; where a relay's contact may be open or closed, or one output or another on, what
    /// does most.
    pub nominal: SolvedCorner,
    /// Every corner.
    pub corners: Vec<SolvedCorner>,
    /// What a meter reads on the bare pin, all loads unplugged.
    pub bare: MeterReading,
}

/// A corner and its solution.
#[derive(Clone, Debug, PartialEq)]
pub struct SolvedCorner {
    /// The corner.
    pub point: Point,
    /// The solution.
    pub operating: Operating,
}

/// Solves every key state of the load with the number `subject`; nothing where there is no such load.
pub fn rest(wiring: &Wiring, subject: usize, around: &Surroundings) -> Option<Rest> {
    let load = wiring.loads.get(subject)?;
    let mut solver = Solver::new(wiring, around);
    let mut states: Vec<StateRest> = Vec::new();
    for state in KeyState::ALL.into_iter().filter(|state| state.concerns(wiring, load)) {
        let same = states.last().filter(|before| wiring.is_the_same(before.state, state));
        states.push(match same {
            Some(before) => StateRest { state, ..before.clone() },
            None => StateRest {
                state,
                nominal: nominal(&mut solver, subject, state)?,
                corners: solve_corners(&mut solver, subject, state),
                bare: meter::read(&mut solver, state)?,
            },
        });
    }
    Some(Rest { wiring: wiring.clone(), subject, states })
}

fn solve_corners(solver: &mut Solver<'_>, subject: usize, state: KeyState) -> Vec<SolvedCorner> {
    let points = corner::points(state, solver.wiring, subject, solver.around);
    let mut corners = Vec::with_capacity(points.len());
    corners.extend(points.into_iter().filter_map(|point| solve_as_lit(solver, state, point)));
    corners
}

/// A filament that gets next to nothing is cold, and has the resistance that a meter reads.
fn solve_as_lit(solver: &mut Solver<'_>, state: KeyState, point: Point) -> Option<SolvedCorner> {
    let operating = solver.operate(state, &point)?;
    let load = solver.wiring.loads.get(point.subject);
    let is_lamp = load.is_some_and(|it| it.kind == LoadKind::Lamp);
    let solved = SolvedCorner { point, operating };
    if !is_lamp || point.phase == Phase::Standing || solved.size_at(point.subject) > GLOWING_V {
        return Some(solved);
    }
    let cold = Point { phase: Phase::Standing, ..point };
    // named as it was: a lamp that hardly glows is no lamp that is switched on
    Some(SolvedCorner { point, operating: solver.operate(state, &cold)? })
}

/// What would be less across a glowing 12 V lamp leaves it cold: common practice, no source.
const GLOWING_V: f64 = 4.0;

fn nominal(solver: &mut Solver<'_>, subject: usize, state: KeyState) -> Option<SolvedCorner> {
    let (wiring, around) = (solver.wiring, solver.around);
    // the starter takes the battery down: the first corner at which it turns
    let at =
        around.corners.iter().copied().find(|at| at.is_cranking && state == KeyState::Cranking);
    let at = at.unwrap_or(around.nominal);
    let solved = |(contact, commanded): (&Contact, Commanded)| {
        let point = Point { commanded, ..Point::nominal(at, subject, *contact) };
        solve_as_lit(solver, state, point)
    };
    let contacts = corner::contacts(state, wiring).iter();
    let mut commands = wiring.commands(state, subject);
    if state == KeyState::Outlived {
        commands.truncate(1);
    }
    let each = contacts.flat_map(|contact| commands.iter().map(move |it| (contact, *it)));
    each.filter_map(solved).reduce(|one, other| {
        let more = other.size_at(subject) > one.size_at(subject);
        if more { other } else { one }
    })
}

impl SolvedCorner {
    /// The load that is asked about.
    pub fn load(&self) -> Option<&LoadFlow> {
        self.operating.loads.get(self.point.subject)
    }

    /// What drives a load there: the voltage that would do the same to it at 20 °C.
    pub fn acting(&self, load: &Load) -> Voltage {
        let temperature = self.point.at.temperature;
        self.load().map_or_else(Voltage::default, |it| load.cold_voltage(it.voltage, temperature))
    }

    /// Where the current of the load comes from or goes to: the part that carries most of it.
    pub fn carrier(&self) -> Option<PinPart> {
        let of_subject = PinPart::Load(self.point.subject);
        let others = self.operating.branches.iter().filter(|branch| branch.part != of_subject);
        let size = |current: Current| current.base().abs();
        let most = others.max_by(|a, b| size(a.current).total_cmp(&size(b.current)));
        most.map(|branch| branch.part)
    }

    fn size_at(&self, subject: usize) -> f64 {
        self.operating.loads.get(subject).map_or(0.0, |flow| flow.voltage.base().abs())
    }

    /// What a fitter calls this corner.
    pub fn name(&self, state: KeyState, wiring: &Wiring) -> String {
        let has_choice = wiring.goes_to(FarEnd::Relay) && corner::contacts(state, wiring).len() > 1;
        self.name_parts(state, has_choice).concat()
    }

    /// The same in its parts; `has_choice` where the relay's contact may be open or closed.
    pub(super) fn name_parts(&self, state: KeyState, has_choice: bool) -> [&'static str; 3] {
        let is_open = has_choice && self.point.contact == Contact::Open;
        let commanded = match self.point.commanded {
            Commanded::OwnAlone if state == KeyState::Outlived => ", the output on",
            Commanded::OwnAlone => ", the other output off",
            Commanded::All(_) => ", several others on",
            Commanded::One(_) | Commanded::AsStated => "",
        };
        [self.point.at.name, if is_open { ", 87 open" } else { "" }, commanded]
    }
}

impl StateRest {
    /// The voltage from the pin to the far end of the load, over all corners.
    pub fn voltage(&self) -> Option<Band<Voltage>> {
        let nominal = self.nominal.load()?.voltage;
        Some(self.widened(nominal, |flow| flow.voltage))
    }

    /// The current from the pin through the load, over all corners.
    pub fn current(&self) -> Option<Band<Current>> {
        let nominal = self.nominal.load()?.current;
        Some(self.widened(nominal, |flow| flow.current))
    }

    fn widened<Q: Measure>(&self, nominal: Q, of: impl Fn(&LoadFlow) -> Q) -> Band<Q> {
        // what is commanded on is no state of rest
        let is_meant = |it: &&SolvedCorner| {
            self.state != KeyState::Outlived || it.point.commanded == Commanded::AsStated
        };
        let corners = self.corners.iter().filter(is_meant).filter_map(SolvedCorner::load);
        corners.fold(Band::exact(nominal), |band, flow| band.widened_to(of(flow)))
    }
}

impl Rest {
    /// One of the states.
    pub fn state(&self, state: KeyState) -> Option<&StateRest> {
        self.states.iter().find(|it| it.state == state)
    }
}
