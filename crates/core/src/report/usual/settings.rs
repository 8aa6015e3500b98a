//! What is entered in the controller.

use std::collections::BTreeMap;

use crate::{
    message::Message,
    questions::{
        coils::words as coils,
        firing::words::{self as firing, wired},
    },
    report::{Answer, Report, Row, Table},
    say,
    words::Wording,
};

use super::{
    Chosen, Line, gathered, names,
    step::{StepUse, shortened},
    words,
};

/// Something that is entered.
#[derive(Clone, Debug, PartialEq)]
pub enum Setting {
    /// A value or two.
    Said(Line),
    /// What belongs to what: cylinders to channels, dwell to supply.
    Paired {
        /// What it is about.
        about: Vec<String>,
        /// What the first and the second of each pair are.
        heads: [Message; 2],
        /// The pairs, in order.
        pairs: Vec<(String, String)>,
    },
}

/// A way of firing, and what was found at the car of the same channels.
const FIRED: [(&str, &str); 3] = [
    ("channels.ignition_mode", "channels.coils_wired"),
    ("channels.injection_mode", "channels.injectors_wired"),
    ("channels.second_mode", "channels.second_wired"),
];

pub(super) fn settings(report: &Report, chosen: &[Chosen<'_>]) -> Vec<Setting> {
    let mut settings = Vec::new();
    for (planned, wired) in FIRED {
        let find = |subject: &str| answers(report).find(|it| it.subject == subject);
        let Some(planned) = find(planned) else { continue };
        let entered =
            find(wired).filter(|it| first_cure(it).is_some_and(|it| LEADS_STAY.contains(&it)));
        let setting = entered.or(Some(planned)).and_then(|answer| channels(report, answer));
        if let Some(setting) = setting {
            add(&mut settings, setting);
        }
    }
    settings.extend(answers(report).find_map(dwell));
    let said = chosen.iter().filter_map(|it| {
        let planned = FIRED.iter().find(|(planned, _)| it.subject == *planned);
        let wired = planned.and_then(|(_, wired)| answers(report).find(|it| it.subject == *wired));
        // an order that suits the leads as they are stands in the place of the planned one
        let is_other = it.message.code == firing::DO_ENTER.code;
        if is_other && wired.and_then(first_cure) == Some(wired::CURE_ORDER.code) {
            return None;
        }
        Some((it.about.clone(), shortened(it.message, StepUse::Enter)?))
    });
    settings.extend(gathered(said).into_iter().map(Setting::Said));
    settings
}

/// The same pairs of several are entered alike.
fn add(settings: &mut Vec<Setting>, setting: Setting) {
    if let Setting::Paired { about, heads, pairs } = &setting {
        for there in settings.iter_mut() {
            let Setting::Paired { about: of, heads: named, pairs: known } = there else { continue };
            if named == heads && known == pairs {
                of.extend_from_slice(about);
                return;
            }
        }
    }
    settings.push(setting);
}

fn answers(report: &Report) -> impl Iterator<Item = &Answer> {
    report.sections.iter().flat_map(|section| &section.answers).map(AsRef::as_ref)
}

/// What cures crossed leads and leaves them as they are.
const LEADS_STAY: [&str; 6] = [
    wired::CURE_ORDER.code,
    wired::CURE_SETTING_TURN.code,
    wired::CURE_SETTING_EARLIER.code,
    wired::CURE_SETTING_LATER.code,
    wired::CURE_SETTING_FUEL_EARLIER.code,
    wired::CURE_SETTING_FUEL_LATER.code,
];

/// What moves them.
const LEADS_MOVE: [&str; 6] = [
    wired::CURE_EXCHANGE.code,
    wired::CURE_EXCHANGE_INJECTORS.code,
    wired::CURE_MOVE.code,
    wired::CURE_MOVE_TOWERS.code,
    wired::CURE_SETTING_TOWERS_ON.code,
    wired::CURE_SETTING_TOWERS_BACK.code,
];

/// The first cure of crossed leads.
fn first_cure(answer: &Answer) -> Option<&'static str> {
    let mut codes = answer.to_do.iter().map(|it| it.code);
    codes.find(|code| LEADS_STAY.contains(code) || LEADS_MOVE.contains(code))
}

/// A rotary's plugs, by rotor.
const ROTORS: [&str; 2] = [firing::COL_ROTOR.code, firing::COL_PLUG.code];

/// Which channel, or tower, belongs to which cylinder.
fn channels(report: &Report, answer: &Answer) -> Option<Setting> {
    const CYLINDERS: [&Wording; 4] =
        [firing::COL_CYLINDER, firing::COL_CYLINDERS, firing::COL_ROTOR, firing::COL_PLUG];
    const CHANNELS: [&Wording; 4] = [
        firing::COL_BY_ORDER_USED,
        firing::COL_BY_CYLINDER_USED,
        firing::COL_CHANNEL,
        firing::COL_TOWER,
    ];
    answer.tables.iter().find_map(|table| {
        let (cylinder, channel) = (column(table, &CYLINDERS)?, column(table, &CHANNELS)?);
        let mut pairs: BTreeMap<u64, (String, String)> = BTreeMap::new();
        for row in &table.rows {
            let Some((number, there, reached)) = pair(row, channel, cylinder) else { continue };
            let known = pairs.entry(number).or_insert_with(|| (there, String::new()));
            if !known.1.is_empty() {
                known.1.push_str(" + ");
            }
            known.1.push_str(&reached);
        }
        let is_tower =
            table.columns.get(channel).is_some_and(|it| it.code == firing::COL_TOWER.code);
        let is_rotor = table.columns.get(cylinder).is_some_and(|it| ROTORS.contains(&it.code));
        let head = if is_tower { say!(words::TOWER) } else { say!(words::CHANNEL) };
        // one channel is no choice
        (pairs.len() > 1).then(|| Setting::Paired {
            about: vec![names::called(report, &answer.subject)],
            heads: [head, if is_rotor { say!(words::ROTOR) } else { say!(words::CYLINDER) }],
            pairs: pairs.into_values().collect(),
        })
    })
}

/// The number of a channel, its name, and what it reaches. A row below the table's own has no number.
fn pair(row: &Row, channel: usize, cylinder: usize) -> Option<(u64, String, String)> {
    let (there, reached) = (row.cells.get(channel)?, row.cells.get(cylinder)?);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a channel's number is small and not below nought"
    )]
    let number = there.number? as u64;
    Some((number, there.shown.clone(), reached.shown.clone()))
}

fn column(table: &Table, codes: &[&Wording]) -> Option<usize> {
    table.columns.iter().position(|it| codes.iter().any(|code| code.code == it.code))
}

/// The dwell to enter at each supply.
fn dwell(answer: &Answer) -> Option<Setting> {
    answer.to_do.iter().find(|it| it.code == coils::DO_ENTER.code)?;
    let table = answer.tables.iter().find(|it| it.caption.code == coils::TABLE.code)?;
    let (supply, dwell) =
        (column(table, &[coils::COLUMN_SUPPLY])?, column(table, &[coils::COLUMN_DWELL])?);
    let pairs = table.rows.iter().filter_map(|row| {
        let dwell = row.cells.get(dwell)?;
        let shown = dwell.number.map_or(words::NEVER.text, |_| dwell.shown.as_str());
        Some((row.cells.get(supply)?.shown.clone(), shown.to_owned()))
    });
    Some(Setting::Paired {
        about: vec![words::COILS.text.to_owned()],
        heads: [say!(words::SUPPLY), say!(words::DWELL)],
        pairs: pairs.collect(),
    })
}
