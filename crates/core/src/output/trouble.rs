//! What can be wrong with a load on an output: a row each.

use super::{End, Phase, Point};

/// What can be wrong with a load on an output. What is worse is said by [`Trouble::rank`], not by the order of lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// It acts while the output is commanded off.
    LiveAtRest,
    /// It acts while the controller starts.
    LiveAtKeyOn,
    /// It acts with the key off.
    LiveKeyOff,
    /// Once on, it may stay in when the output is commanded off.
    MayStayIn,
    /// Once on, it may stay in when the key is turned off.
    MayStayInKeyOff,
    /// It never acts, even with the output on.
    NeverActs,
    /// It counts pulses, and gets none: it is as high with the output off.
    NoPulses,
    /// It acts when another output is on, while it is not asked to.
    ActsWithOther,
    /// Once on, it may stay in while another output is on.
    MayStayInWithOther,
    /// The diode across it is the wrong way round, or the load is driven backwards: a dead short.
    ShortedByDiode,
    /// It gets more than its input bears.
    OverVoltage,
    /// The output carries more than it may.
    TooMuchCurrent,
    /// The kick at each turn-off is more than the output's clamp may take.
    KickTooStrong,
    /// The kick at each turn-off is more than any output takes, whatever this one's data are.
    KickBeyondAny,
    /// Pulsed, its kicks melt the output.
    KicksMelt,
    /// It is pulsed faster than the output can.
    TooFast,
    /// It feeds the controller that is switched off, enough to keep it alive.
    WakesController,
    /// It acts with the key off, as long as the controller holds its own supply on.
    LiveOutlived,
    /// Meanwhile the output drives amperes into a feed that the key has cut off.
    DrivesDeadFeed,
    /// Once on, it may stay in while the controller restarts.
    MayStayInAtRestart,
    /// With the output on it is not sure to act.
    Weak,
    /// It counts pulses, and what is left across it between them may keep it from seeing that they end.
    PulsesBlurred,
    /// Its inrush is more than the output may carry.
    Inrush,
    /// The kick at each turn-off may be more than the output's clamp takes: with the most inductance that such a load has.
    KickPerhapsTooStrong,
    /// The kick at each turn-off is more than outputs usually take, and what this one takes is not known.
    KickBeyondUsual,
    /// Pulsed, it pulls in and lets go with each pulse: a relay that chatters.
    Chatters,
    /// It acts with the key off, if the controller holds its own supply on: that is not known.
    PerhapsLiveOutlived,
    /// The output drives amperes into a feed that the key has cut off, if the controller holds its own supply on.
    PerhapsDrivesDeadFeed,
    /// Pulsed, its kicks heat the output.
    KicksHeat,
    /// It feeds a circuit that is switched off, through its own far end.
    FeedsDeadFeed,
    /// A little current flows into the controller that is switched off.
    LeaksIntoController,
    /// The battery is drained with the key off.
    DrainsBattery,
    /// It takes a hair more than the output may carry.
    AtLimit,
    /// It takes more from the controller's 5 V than that can spare.
    LoadsLogicRail,
    /// It gets more than many such inputs bear, and what this one bears is not known.
    PerhapsOverVoltage,
    /// It pushes current into the controller's live 5 V or 3.3 V.
    LiftsLogicRail,
    /// While the starter turns it is not sure to act: the one trouble that nearly every relay has.
    WeakWhileCranking,
    /// Nothing is known to catch its kick.
    KickUncaught,
    /// Pulsed at its duty it is not sure to act.
    PulsedTooLittle,
    /// It may act with the fuse of its own feed pulled.
    ActsWithoutFeed,
    /// It may act when the controller's ground is lost.
    ActsWithoutGround,
    /// It gets more than its input bears when the controller's ground is lost.
    OverVoltageWithoutGround,
    /// It may act when the controller's supply is lost.
    ActsWithoutSupply,
    /// With the fuse of its feed pulled, the output keeps alive what else hangs on that feed.
    KeepsFeedAlive,
    /// With the controller's supply lost, it keeps the controller half alive.
    KeepsControllerAlive,
}

/// What a trouble does to the answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stance {
    /// The load may not be connected so.
    Forbids,
    /// It may, with care.
    Cares,
    /// It may be connected all the same.
    Bears,
}

/// What comes of a trouble: how grave it is follows from this, and from what the load does when it acts unasked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Harm {
    /// It acts unasked.
    Acts,
    /// The output melts.
    MeltsOutput,
    /// An output without a clamp is destroyed; most have one that their pin table does not tell of.
    MayNeedClamp,
    /// A pulsed valve moves less than it should.
    FallsShort,
    /// It is weak by the usual voltage of its kind, or by the one that was typed.
    WeakByGuess,
    /// It does not do what it should.
    Fails,
}

/// By what the worst corner of a trouble is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum By {
    MostVoltage,
    LeastVoltage,
    /// The current that is switched off.
    LoadCurrent,
    SwitchCurrent,
    Frequency,
    Heat,
    LeastPulse,
    MostPulse,
    IntoRail,
    IntoFeed,
    IntoLogicRail,
    FromBattery,
}

/// Which corners can show a trouble.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum ShowingCorners {
    Anywhere,
    /// A running current is not asked for of a motor that stands.
    Running,
    Standing,
    /// At a low duty it is not meant to act.
    LongPulse,
}

/// All that is known of a trouble, its words apart.
#[derive(Clone, Copy, Debug)]
struct TroubleRow {
    rank: u8,
    stance: Stance,
    harm: Harm,
    needs_fault: bool,
    needs_to_be_in: bool,
    by: By,
    asked: ShowingCorners,
    /// Troubles that say it already.
    unless: &'static [Trouble],
}

impl TroubleRow {
    const fn new(rank: u8, stance: Stance) -> Self {
        Self {
            rank,
            stance,
            harm: Harm::Fails,
            needs_fault: false,
            needs_to_be_in: false,
            by: By::MostVoltage,
            asked: ShowingCorners::Anywhere,
            unless: &[],
        }
    }
    const fn forbids(rank: u8) -> Self {
        Self::new(rank, Stance::Forbids)
    }
    const fn cares(rank: u8) -> Self {
        Self::new(rank, Stance::Cares)
    }
    const fn bears(rank: u8) -> Self {
        Self::new(rank, Stance::Bears)
    }
    const fn by_acting(self) -> Self {
        self.harm(Harm::Acts)
    }
    const fn harm(self, harm: Harm) -> Self {
        Self { harm, ..self }
    }
    const fn after_a_fault(self) -> Self {
        Self { needs_fault: true, ..self }
    }
    const fn once_in(self) -> Self {
        Self { needs_to_be_in: true, ..self }
    }
    const fn worst_by(self, by: By) -> Self {
        Self { by, ..self }
    }
    const fn asked(self, asked: ShowingCorners) -> Self {
        Self { asked, ..self }
    }
    const fn unless(self, unless: &'static [Trouble]) -> Self {
        Self { unless, ..self }
    }
}

impl Trouble {
    #[expect(clippy::too_many_lines, reason = "a row each")]
    const fn row(self) -> TroubleRow {
        use Trouble as T;
        match self {
            T::LiveAtRest => TroubleRow::forbids(1).by_acting().unless(&[T::OverVoltage]),
            T::LiveAtKeyOn => TroubleRow::forbids(2).by_acting().unless(&[T::OverVoltage]),
            T::LiveKeyOff => TroubleRow::forbids(3).by_acting().unless(&[T::OverVoltage]),
            T::MayStayIn => TroubleRow::forbids(4)
                .by_acting()
                .once_in()
                .unless(&[T::LiveAtRest, T::DrivesDeadFeed]),
            T::MayStayInKeyOff => {
                TroubleRow::forbids(5).by_acting().once_in().unless(&[T::LiveKeyOff])
            }
            T::NeverActs => TroubleRow::forbids(6)
                .worst_by(By::LeastVoltage)
                .unless(&[T::LiveAtRest, T::ShortedByDiode]),
            T::ActsWithOther => TroubleRow::forbids(7).by_acting().unless(&[T::LiveAtRest]),
            T::MayStayInWithOther => TroubleRow::forbids(8).by_acting().once_in().unless(&[
                T::ActsWithOther,
                T::LiveAtRest,
                T::MayStayIn,
            ]),
            T::ShortedByDiode => {
                TroubleRow::forbids(9).harm(Harm::MeltsOutput).worst_by(By::SwitchCurrent)
            }
            T::OverVoltage => TroubleRow::forbids(10).harm(Harm::MeltsOutput),
            T::TooMuchCurrent => TroubleRow::forbids(11)
                .harm(Harm::MeltsOutput)
                .worst_by(By::SwitchCurrent)
                .asked(ShowingCorners::Running)
                .unless(&[T::ShortedByDiode]),
            T::KickTooStrong => {
                TroubleRow::forbids(12).worst_by(By::LoadCurrent).unless(&[T::KicksMelt])
            }
            T::KickBeyondAny => {
                TroubleRow::forbids(13).worst_by(By::LoadCurrent).asked(ShowingCorners::Running)
            }
            T::KicksMelt => TroubleRow::forbids(14).harm(Harm::MeltsOutput).worst_by(By::Heat),
            T::TooFast => TroubleRow::forbids(15).worst_by(By::Frequency),
            T::WakesController => TroubleRow::forbids(16).worst_by(By::IntoRail),
            T::LiveOutlived => TroubleRow::forbids(17).by_acting().unless(&[
                T::LiveAtRest,
                T::LiveKeyOff,
                T::DrivesDeadFeed,
            ]),
            T::DrivesDeadFeed => {
                TroubleRow::forbids(18).worst_by(By::IntoFeed).unless(&[T::LiveAtRest])
            }
            T::PerhapsLiveOutlived => TroubleRow::bears(35).unless(&[
                T::LiveAtRest,
                T::LiveKeyOff,
                T::PerhapsDrivesDeadFeed,
                T::DrivesDeadFeed,
            ]),
            T::PerhapsDrivesDeadFeed => TroubleRow::bears(36)
                .worst_by(By::IntoFeed)
                .unless(&[T::LiveAtRest, T::DrivesDeadFeed]),
            T::LoadsLogicRail => {
                TroubleRow::forbids(19).worst_by(By::LoadCurrent).asked(ShowingCorners::Running)
            }
            T::NoPulses => TroubleRow::forbids(20).unless(&[T::NeverActs, T::OverVoltage]),
            T::PerhapsOverVoltage => TroubleRow::cares(32),
            T::AtLimit => TroubleRow::cares(33).worst_by(By::SwitchCurrent).unless(&[
                T::TooMuchCurrent,
                T::Inrush,
                T::ShortedByDiode,
            ]),
            T::MayStayInAtRestart => {
                TroubleRow::cares(21).by_acting().once_in().unless(&[T::LiveAtKeyOn])
            }
            T::Weak => TroubleRow::cares(22).worst_by(By::LeastVoltage).unless(&[
                T::NeverActs,
                T::LiveAtRest,
                T::ShortedByDiode,
            ]),
            T::PulsesBlurred => TroubleRow::cares(34).worst_by(By::MostVoltage),
            T::Inrush => TroubleRow::cares(23)
                .worst_by(By::SwitchCurrent)
                .asked(ShowingCorners::Standing)
                .unless(&[T::TooMuchCurrent]),
            T::KickPerhapsTooStrong => {
                TroubleRow::cares(24).worst_by(By::LoadCurrent).unless(&[T::KickTooStrong])
            }
            T::KickBeyondUsual => TroubleRow::cares(25)
                .worst_by(By::LoadCurrent)
                .asked(ShowingCorners::Running)
                .unless(&[T::KickBeyondAny]),
            T::Chatters => {
                TroubleRow::cares(26).worst_by(By::LeastPulse).asked(ShowingCorners::Running)
            }
            T::KicksHeat => TroubleRow::cares(27).worst_by(By::Heat).unless(&[T::KicksMelt]),
            T::FeedsDeadFeed => TroubleRow::cares(28).worst_by(By::IntoFeed).unless(&[
                T::LiveKeyOff,
                T::LiveAtRest,
                T::LiveAtKeyOn,
                T::MayStayIn,
            ]),
            T::LeaksIntoController => {
                TroubleRow::cares(29).worst_by(By::IntoRail).unless(&[T::WakesController])
            }
            T::DrainsBattery => TroubleRow::cares(30).worst_by(By::FromBattery).unless(&[
                T::LiveKeyOff,
                T::MayStayInKeyOff,
                T::WakesController,
                T::LeaksIntoController,
            ]),
            T::LiftsLogicRail => TroubleRow::cares(31).worst_by(By::IntoLogicRail),
            T::WeakWhileCranking => TroubleRow::bears(37)
                .harm(Harm::WeakByGuess)
                .worst_by(By::LeastVoltage)
                .unless(&[T::NeverActs, T::Weak, T::LiveAtRest, T::ShortedByDiode]),
            T::KickUncaught => TroubleRow::bears(38)
                .harm(Harm::MayNeedClamp)
                .worst_by(By::LoadCurrent)
                .unless(&[T::NeverActs, T::ShortedByDiode, T::KickBeyondAny, T::KickBeyondUsual]),
            T::PulsedTooLittle => TroubleRow::bears(39)
                .harm(Harm::FallsShort)
                .worst_by(By::MostPulse)
                .asked(ShowingCorners::LongPulse)
                .unless(&[T::NeverActs, T::Weak]),
            T::ActsWithoutFeed => TroubleRow::bears(40).by_acting().after_a_fault().unless(&[
                T::LiveAtRest,
                T::LiveAtKeyOn,
                T::LiveKeyOff,
            ]),
            T::ActsWithoutGround => TroubleRow::bears(41).by_acting().after_a_fault().unless(&[
                T::LiveAtRest,
                T::LiveAtKeyOn,
                T::LiveKeyOff,
                T::OverVoltageWithoutGround,
            ]),
            T::OverVoltageWithoutGround => {
                TroubleRow::bears(45).after_a_fault().unless(&[T::OverVoltage])
            }
            T::ActsWithoutSupply => TroubleRow::bears(42).by_acting().after_a_fault().unless(&[
                T::LiveAtRest,
                T::LiveAtKeyOn,
                T::LiveKeyOff,
            ]),
            T::KeepsFeedAlive => TroubleRow::bears(43)
                .after_a_fault()
                .worst_by(By::IntoFeed)
                .unless(&[T::ActsWithoutFeed, T::FeedsDeadFeed]),
            T::KeepsControllerAlive => TroubleRow::bears(44)
                .after_a_fault()
                .worst_by(By::IntoRail)
                .unless(&[T::ActsWithoutSupply, T::WakesController]),
        }
    }

    /// Its place among the others: 1 is the worst.
    pub fn rank(self) -> u8 {
        self.row().rank
    }

    /// What it does to the answer.
    pub fn stance(self) -> Stance {
        self.row().stance
    }

    /// What comes of it.
    pub fn harm(self) -> Harm {
        self.row().harm
    }

    /// Whether a load without other troubles may be connected all the same.
    pub fn is_bearable(self) -> bool {
        self.stance() == Stance::Bears
    }

    /// Whether it says no, rather than "with care".
    pub fn forbids(self) -> bool {
        self.stance() == Stance::Forbids
    }

    /// Whether something has to fail first.
    pub fn needs_fault(self) -> bool {
        self.row().needs_fault
    }

    /// Whether the load must have been in before.
    pub(super) fn needs_to_be_in(self) -> bool {
        self.row().needs_to_be_in
    }

    /// By what its worst corner is told.
    pub(super) fn by(self) -> By {
        self.row().by
    }

    /// Whether a corner can show it at all.
    pub(super) fn is_asked_at(self, point: &Point) -> bool {
        match self.row().asked {
            ShowingCorners::Anywhere => true,
            ShowingCorners::Running => point.phase == Phase::Running,
            ShowingCorners::Standing => point.phase == Phase::Standing,
            ShowingCorners::LongPulse => point.duty != End::Low && !point.is_hottest,
        }
    }

    /// Every one.
    const ALL: [Self; 45] = [
        Self::LiveAtRest,
        Self::LiveAtKeyOn,
        Self::LiveKeyOff,
        Self::MayStayIn,
        Self::MayStayInKeyOff,
        Self::NeverActs,
        Self::NoPulses,
        Self::ActsWithOther,
        Self::MayStayInWithOther,
        Self::ShortedByDiode,
        Self::OverVoltage,
        Self::LoadsLogicRail,
        Self::AtLimit,
        Self::PerhapsOverVoltage,
        Self::TooMuchCurrent,
        Self::KickTooStrong,
        Self::KickBeyondAny,
        Self::KicksMelt,
        Self::KickBeyondUsual,
        Self::TooFast,
        Self::WakesController,
        Self::LiveOutlived,
        Self::DrivesDeadFeed,
        Self::PerhapsLiveOutlived,
        Self::PerhapsDrivesDeadFeed,
        Self::MayStayInAtRestart,
        Self::Weak,
        Self::PulsesBlurred,
        Self::Inrush,
        Self::KickPerhapsTooStrong,
        Self::Chatters,
        Self::KicksHeat,
        Self::FeedsDeadFeed,
        Self::LeaksIntoController,
        Self::DrainsBattery,
        Self::LiftsLogicRail,
        Self::WeakWhileCranking,
        Self::KickUncaught,
        Self::PulsedTooLittle,
        Self::ActsWithoutFeed,
        Self::ActsWithoutGround,
        Self::OverVoltageWithoutGround,
        Self::ActsWithoutSupply,
        Self::KeepsFeedAlive,
        Self::KeepsControllerAlive,
    ];

    /// Those that may be borne with care: they forbid nothing.
    pub fn cares() -> Vec<Self> {
        Self::ALL.into_iter().filter(|it| it.stance() == Stance::Cares).collect()
    }

    /// Whether another trouble already says it.
    pub(super) fn is_said_by(self, other: Self) -> bool {
        self.row().unless.contains(&other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_has_a_rank_of_its_own() {
        let mut ranks: Vec<_> = Trouble::ALL.iter().map(|it| it.rank()).collect();
        ranks.sort_unstable();
        let all: Vec<_> = (1..).take(Trouble::ALL.len()).collect();
        assert_eq!(ranks, all);
    }

    #[test]
    fn what_forbids_stands_before_what_is_borne() {
        let last = |stance| {
            Trouble::ALL.iter().filter(|it| it.stance() == stance).map(|it| it.rank()).max()
        };
        let first = |stance| {
            Trouble::ALL.iter().filter(|it| it.stance() == stance).map(|it| it.rank()).min()
        };
        assert!(last(Stance::Forbids) < first(Stance::Cares), "no, then with care");
        assert!(last(Stance::Cares) < first(Stance::Bears), "then all the same");
    }

    #[test]
    fn nothing_is_passed_over_for_what_passes_it_over() {
        for one in &Trouble::ALL {
            for other in one.row().unless {
                assert!(!other.is_said_by(*one), "{one:?} and {other:?} silence each other");
            }
        }
    }
}
