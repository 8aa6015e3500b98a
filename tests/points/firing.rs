//! Which channel fires what: where sparks fall that shouldn't, and what is certain.

use quietpin_core::{
    finding::Severity::{Danger, Doubt, Fault},
    report::{Answer, Report, Tone, report},
};

use super::{graded, planned, told, words};

const ODD: &str = "firing-odd-told-even";

fn answer<'a>(report: &'a Report, subject: &str) -> &'a Answer {
    let all = report.sections.iter().flat_map(|it| &it.answers);
    all.into_iter().find(|it| it.subject == subject).expect(subject)
}

/// By hand: even intervals are 0 120 240 360 480 600; less 0 90 240 330 480 570 leaves 0 30 0 30 0 30 in the order 1-6-5-4-3-2.
#[test]
fn an_odd_fire_engine_that_is_fired_evenly_is_told_the_error_of_each_cylinder() {
    let said = words(ODD, &[], "firing.entered-differs");
    assert!(
        said.contains("cylinder 2 30° late, cylinder 4 30° late and cylinder 6 30° late"),
        "{said}"
    );
    assert!(said.contains("1-2-3-4-5-6, at 0 90 240 330 480 570"), "{said}");
    assert_eq!(told(ODD, &[], "firing.entered-differs"), [Fault], "late: no power, hot exhaust");
    assert_eq!(
        answer(&report(&planned(ODD, &[])), "channels.ignition_mode").verdict.tone,
        Tone::Bad
    );
}

#[test]
fn the_engines_own_angles_in_the_controller_are_right_to_what_a_mark_shows() {
    let entered = |angles| {
        let texts = [("controller.spacing", "angles"), ("controller.angles", angles)];
        told(ODD, &texts, "firing.entered-differs")
    };
    assert_eq!(entered("0 90 240 330 480 570"), []);
    assert_eq!(entered("0 92 240 332 480 572"), [], "2 degrees are not seen");
    assert_eq!(entered("0 94 240 334 480 574"), [Doubt], "4 are a matter of margins");
    assert_eq!(entered("0 92.1 240 332.1 480 572.1"), [Doubt], "a little more is seen");
    assert_eq!(entered("0 85.2 240 325.2 480 565.2"), [Doubt], "4.8 are margins");
    assert_eq!(entered("0 84.8 240 324.8 480 564.8"), [Danger], "5.2 are not");
    assert_eq!(entered("0 80 240 320 480 560"), [Danger], "10 too early are not");
    // from another first firing it is the same: the offset is apart
    assert_eq!(entered("30 120 270 360 510 600"), []);
}

#[test]
fn what_is_not_said_of_the_controller_is_asked_for_and_is_no_finding() {
    let texts = [("controller.spacing", "")];
    assert_eq!(told(ODD, &texts, "firing.entered-differs"), []);
    let report = report(&planned(ODD, &texts));
    let to_do = &answer(&report, "channels.ignition_mode").to_do;
    let said: Vec<_> = to_do.iter().filter(|it| it.code == "firing.do-enter-angles").collect();
    assert!(said[0].text.contains("up to 30° out"), "{said:?}");
}

/// By hand, of a straight six wired 1-2-3-4-5-6 by its firing order 1-5-3-6-2-4 at every 120 degrees: with channel 5 second and
/// channel 2 fifth the one fires at 120 in place of 480, the other at 480 in place of 120: cylinder 2 is 360 out, and 5 too.
#[test]
fn another_order_in_the_controller_is_told_by_cylinder_unless_the_wires_suit_it() {
    let name = "firing-outputs-shared";
    let entered = |order, wired: &[&'static str]| {
        let cells: Vec<String> =
            (0..wired.len()).map(|at| format!("channels.coils_wired.{at}")).collect();
        let mut texts = vec![("controller.order", order)];
        texts.extend(cells.iter().map(String::as_str).zip(wired.iter().copied()));
        let report = report(&planned(name, &texts));
        let found = graded(&report, "firing.entered-differs");
        let overlap = graded(&report, "firing.spark-overlap");
        (found, overlap)
    };
    assert_eq!(entered("1-2-3-4-5-6", &[]), (vec![], vec![]));
    assert_eq!(entered("1-2-3-4-5-6-1-2-3-4-5-6", &[]), (vec![], vec![]), "both turns");
    assert_eq!(entered("1-5-3-4-2-6", &[]), (vec![Fault], vec![]), "a turn out: never fires");
    assert_eq!(entered("2-1-3-4-5-6", &[]), (vec![Danger], vec![]), "120 too early: kick-back");
    let said = words(name, &[("controller.order", "1-5-3-4-2-6")], "firing.entered-differs");
    assert!(said.contains("cylinder 2 360° late and cylinder 5 360° late"), "{said}");
    // the leads of 5 and 2 are exchanged as well: right for the order that is entered, wrong for that of the plan
    let wires = ["1", "2", "3", "6", "5", "4"];
    assert_eq!(entered("1-5-3-4-2-6", &wires), (vec![], vec![]));
    assert_eq!(entered("1-2-3-4-5-6", &wires), (vec![], vec![Fault]));
    // the spacing is judged all the same
    let mut texts =
        vec![("controller.spacing", "angles"), ("controller.angles", "0 90 240 330 480 570")];
    texts.extend([("channels.coils_wired.0", "1"), ("channels.coils_wired.1", "5")]);
    assert_eq!(told(name, &texts, "firing.entered-differs"), [Danger], "30 too early");
}

#[test]
fn the_order_that_cures_the_leads_is_entered_by_a_tap() {
    let texts = [
        ("channels.coils_wired.0", "1"),
        ("channels.coils_wired.1", "3"),
        ("channels.coils_wired.2", "5"),
        ("channels.coils_wired.3", "6"),
        ("channels.coils_wired.4", "2"),
        ("channels.coils_wired.5", "4"),
    ];
    let before = report(&planned("firing-outputs-shared", &texts));
    let cure = before.findings.iter().flat_map(|it| &it.remedies);
    let cure = cure.into_iter().find(|it| it.code == "firing.cure-order").expect("the order");
    assert_eq!(cure.edits.len(), 1, "{cure:?}");
    assert_eq!(
        (cure.edits[0].path.as_str(), cure.edits[0].text.as_str()),
        ("controller.order", "1-3-2-4-5-6")
    );
}

/// A lead on two plugs is none: 30 degrees late on every second cylinder would be one lead on each neighbour as well.
#[test]
fn a_timing_light_on_an_engine_fired_evenly_speaks_of_spacing_and_not_of_leads() {
    assert_eq!(told(ODD, &[], "firing.light-leads"), []);
    assert_eq!(told(ODD, &[], "firing.light-spaced"), [Fault]);
    let said = words(ODD, &[], "firing.light-spaced");
    assert!(said.contains("0 90 240 330 480 570"), "{said}");
    // the same readings where the engine is believed to be even
    let believed = [("engine.angles", ""), ("engine.spacing", "even")];
    assert_eq!(told(ODD, &believed, "firing.light-leads"), []);
    assert!(words(ODD, &believed, "firing.light-spaced").contains("out by 30°"));
    // by the same light with 30 more of advance they are 30 too early in between: detonation
    assert_eq!(
        told(ODD, &[("controller.locked_advance", "-20 deg")], "firing.light-spaced"),
        [Danger]
    );
    // by hand: 1 at 0 and 6 at 90 exchanged are 90 late, at -80, and 90 early, at 100
    let exchanged = [
        ("light.seen.0", "-80"),
        ("light.seen.1", "10"),
        ("light.seen.2", "10"),
        ("light.seen.3", "10"),
        ("light.seen.4", "10"),
        ("light.seen.5", "100"),
    ];
    assert_eq!(told(ODD, &exchanged, "firing.light-leads"), [Danger]);
    assert_eq!(told(ODD, &exchanged, "firing.light-spaced"), []);
}

/// Which counts are built odd-fire, and a straight six's order: common practice, no source.
#[test]
fn even_spacing_is_doubted_where_engines_of_that_count_are_odd_and_nobody_said() {
    let doubted = |cylinders, order, spacing| {
        let texts = [
            ("engine.cylinders", cylinders),
            ("engine.order", order),
            ("engine.spacing", spacing),
            ("channels.ignition_mode", ""),
            ("channels.injection_mode", ""),
            ("channels.second_mode", ""),
            ("controller.outputs", ""),
        ];
        let report = report(&planned("firing-outputs-shared", &texts));
        let tone = answer(&report, "engine").verdict.tone;
        let found = graded(&report, "engine.even-assumed");
        assert_eq!(found == [Doubt], tone == Tone::Doubtful, "{cylinders} {order}");
        found == [Doubt]
    };
    assert!(doubted("2", "", ""), "a twin");
    assert!(doubted("6", "1-6-5-4-3-2", ""), "a V6");
    assert!(doubted("10", "1-6-5-10-2-7-3-8-4-9", ""), "a V10");
    assert!(!doubted("6", "1-6-5-4-3-2", "even"), "said");
    assert!(!doubted("6", "1-5-3-6-2-4", ""), "a straight six by its order");
    assert!(!doubted("4", "1-3-4-2", "") && !doubted("8", "1-8-4-3-6-5-7-2", ""), "built even");
}

/// By hand: pins 0 240 120 and a bank 90 on give tops 0 240 120 and 90 330 210; in the order 1-2-3-4-5-6 they rise as
/// 0 90 240 330 480 570.
#[test]
fn a_crank_that_is_typed_and_contradicts_even_is_found_and_the_verdict_is_not_green() {
    let name = "firing-even-contradicted";
    assert_eq!(told(name, &[], "engine.even-contradicted"), [Fault]);
    assert!(words(name, &[], "engine.even-contradicted").contains("0 90 240 330 480 570"));
    assert_eq!(answer(&report(&planned(name, &[])), "engine").verdict.tone, Tone::Bad);
    // a V-twin's one pin is only taken, where none is typed
    let twin = [
        ("engine.cylinders", "2"),
        ("engine.order", ""),
        ("engine.banks", ""),
        ("engine.pins", ""),
    ];
    assert_eq!(told(name, &twin, "engine.even-contradicted"), [Doubt]);
    let report = report(&planned(name, &twin));
    assert_eq!(answer(&report, "engine").verdict.tone, Tone::Doubtful);
    // pins split by 30 degrees make it even
    assert_eq!(told(name, &[("engine.split", "30")], "engine.even-contradicted"), []);
    assert_eq!(told(name, &[("engine.spacing", "geometry")], "engine.even-contradicted"), []);
}

/// By hand, the cross-plane V8 1-8-4-3-6-5-7-2 fires 1 at 0, 8 at 90, 4 at 180, 3 at 270, 6 at 360, 5 at 450, 7 at 540, 2 at 630:
/// 8 on the fourth pin, at 180, tops at 90, so its bank leads by 90, or follows by 270.
#[test]
fn a_bank_angle_of_the_wrong_hand_is_offered_the_other_way_round() {
    let name = "firing-other-hand";
    let report = report(&planned(name, &[]));
    let found = report.findings.iter().find(|it| it.message.code == "engine.out-of-turn");
    let cures = &found.expect("it can't be").remedies;
    assert_eq!(cures[0].edits[0].text, "270", "{cures:?}");
    for right in ["270", "-90", "−90°"] {
        assert_eq!(
            told(name, &[("engine.bank_angles", right)], "engine.out-of-turn"),
            [],
            "{right}"
        );
    }
    // where it isn't the hand, none is offered
    let said = words(name, &[("engine.pins", "0 0 0 0")], "engine.out-of-turn");
    assert!(!said.contains("other way round"), "{said}");
}

#[test]
fn angles_below_nought_are_angles_and_dashes_between_numbers_are_none() {
    let name = "firing-even-contradicted";
    let with = |pins| {
        let texts = [("engine.spacing", "geometry"), ("engine.pins", pins)];
        answer(&report(&planned(name, &texts)), "engine").verdict.message.text.clone()
    };
    let typed = with("0 240 120");
    assert_eq!(with("0 -120 120"), typed);
    assert_eq!(with("0 −120° -240"), typed);
    assert_eq!(with("0-240-120"), typed);
    assert_eq!(with("0 - 240 - 120"), typed);
}

/// By hand, three cylinders at 0 240 480: the nearest to a place 360 degrees from 1 is 240, 120 short. A spark at 0 is, for the
/// one that fires at 240, 240 before its own: 60 degrees behind bottom dead centre, in the intake.
#[test]
fn a_shared_spark_without_companions_is_told_where_it_lands() {
    let three = [
        ("engine.cylinders", "3"),
        ("engine.order", "1-3-2"),
        ("engine.angles", ""),
        ("controller.spacing", ""),
        ("channels.ignition_mode", "paired-single"),
    ];
    let said = words(ODD, &three, "firing.no-companion");
    assert!(
        said.contains("cylinder 3 gets a spark −240° from its firing point (intake)"),
        "{said}"
    );
    assert_eq!(told(ODD, &three, "firing.no-companion"), [Danger]);
    // a two-stroke twin: half a turn out is the bottom, with the ports open
    let pairs = [("channels.ignition_mode", "paired-single")];
    let said = words("firing-two-stroke-leads", &pairs, "firing.no-companion-one-turn");
    assert!(said.contains("ports open"), "{said}");
    // two rotors: of the trailing plug that is the next chamber
    assert_eq!(told("firing-rotary-trailing", &pairs, "firing.no-companion-one-turn"), [Danger]);
    let said = words("firing-rotary-trailing", &pairs, "firing.no-companion-one-turn");
    assert!(said.contains("compression of the next chamber"), "{said}");
}

/// The exhaust port opens 85 to 110 degrees after the top: common practice, no source.
#[test]
fn the_bottom_of_a_two_stroke_is_no_power_stroke() {
    let name = "firing-two-stroke-leads";
    assert_eq!(told(name, &[], "firing.spark-ports"), [Fault]);
    assert_eq!(told(name, &[], "firing.spark-power"), []);
    // three cylinders, each 120 late: the ports are open; five, each 72 late: they are shut
    let onward = |cylinders, order, wired: &[&str]| {
        let cells: Vec<String> =
            (0..wired.len()).map(|at| format!("channels.coils_wired.{at}")).collect();
        let mut texts = vec![("engine.cylinders", cylinders), ("engine.order", order)];
        texts.extend(cells.iter().map(String::as_str).zip(wired.iter().copied()));
        let report = report(&planned(name, &texts));
        ["firing.spark-ports", "firing.spark-power"].map(|code| graded(&report, code).len())
    };
    assert_eq!(onward("3", "1-2-3", &["3", "1", "2"]), [1, 0]);
    assert_eq!(onward("5", "1-2-3-4-5", &["5", "1", "2", "3", "4"]), [0, 1]);
}

/// Sixty degrees of the rotor are half a turn of the shaft: the apex stands on the short axis, between the two plugs.
#[test]
fn half_a_turn_out_a_trailing_plug_lights_the_next_chamber_and_a_leading_one_its_own_late() {
    let name = "firing-rotary-trailing";
    assert_eq!(told(name, &[], "firing.spark-next"), [Danger]);
    assert_eq!(told(name, &[], "firing.spark-power"), []);
    let leading = [
        ("channels.coils_wired.0", "2L"),
        ("channels.coils_wired.1", "1L"),
        ("channels.coils_wired.2", "1T"),
        ("channels.coils_wired.3", "2T"),
    ];
    assert_eq!(told(name, &leading, "firing.spark-next"), []);
    assert_eq!(told(name, &leading, "firing.spark-power"), [Fault]);
}

/// By hand: 6 coils, 6 and 6 injectors, 2 loads are 20; both sets in pairs are 3 and 3, with 6 and 2 they are 14.
#[test]
fn outputs_are_counted_over_all_uses() {
    let name = "firing-outputs-shared";
    let there = |n| {
        let texts = [("controller.outputs", n), ("channels.second_count", "8")];
        let report = report(&planned(name, &texts));
        let tone = answer(&report, "controller.outputs").verdict.tone;
        (graded(&report, "firing.outputs-short"), tone)
    };
    assert_eq!(there("19"), (vec![Fault], Tone::Bad));
    assert_eq!(there("20"), (vec![], Tone::Good));
    let said = words(name, &[], "firing.outputs-short");
    assert!(
        said.contains("coils 6, injectors 6, second injectors 6 and loads and relays 2"),
        "{said}"
    );
    assert!(said.contains("both sets: companion pairs, 6 channels"), "{said}");
    // the input of an igniter is a coil's own pin
    let input = [("controller.outputs", "19"), ("loads.1.kind", "logic-input")];
    assert_eq!(told(name, &input, "firing.outputs-short"), []);
    // a second load on the same output takes none
    let shared = [("controller.outputs", "19"), ("loads.1.output", "A1")];
    assert_eq!(told(name, &shared, "firing.outputs-short"), []);
}

#[test]
fn both_sets_share_the_injection_channels_unless_the_second_has_its_own() {
    let name = "firing-outputs-shared";
    let short = |texts: &[(&str, &str)]| told(name, texts, "firing.sets-short");
    assert_eq!(short(&[]), [Fault]);
    assert_eq!(short(&[("channels.injection_count", "12")]), []);
    assert_eq!(short(&[("channels.injection_count", "11")]), [Fault]);
    assert_eq!(short(&[("channels.second_count", "6")]), []);
    assert_eq!(short(&[("channels.injection_count", "")]), [], "not told");
    let report = report(&planned(name, &[]));
    assert_eq!(answer(&report, "channels.second_mode").verdict.tone, Tone::Bad);
}

#[test]
fn what_is_certain_before_all_are_fired_is_said() {
    let texts = |wired: &[&'static str]| -> Vec<String> {
        let cells: Vec<String> =
            (0..wired.len()).map(|at| format!("channels.coils_wired.{at}")).collect();
        let texts: Vec<_> = cells.iter().map(String::as_str).zip(wired.iter().copied()).collect();
        let report = report(&planned("firing-outputs-shared", &texts));
        let said = answer(&report, "channels.coils_wired").to_do.iter();
        let codes = ["firing.certainly-wrong", "firing.two-arrangements"];
        said.filter(|it| codes.contains(&it.code)).map(|it| it.text.clone()).collect()
    };
    // by the order 1-5-3-6-2-4: cylinder 4 belongs on channel 6, and answered to channel 2
    let said = texts(&["1", "4"]);
    assert_eq!(said, ["Channel 6 can't be as planned: what the plan has there fired on another."]);
    assert_eq!(texts(&["1", "5"]), [] as [String; 0], "as planned so far");
    // four are seen: 2 and 4 are left for channels 5 and 6
    let said = texts(&["1", "5", "3", "6"]);
    assert!(
        said[0].starts_with("Two arrangements are left: channel 5 reaches 2 and 6 reaches 4"),
        "{said:?}"
    );
    // cylinder 2 was heard on two channels: it is one of them, and the other reaches 4
    let said = texts(&["1", "5", "3", "6", "2", "2"]);
    assert!(
        said[0].contains("channel 5 reaches 2 and 6 reaches 4, or the other way round"),
        "{said:?}"
    );
    // heard on two channels that are neither its own: its own can't be as planned
    let said = texts(&["1", "2", "2"]);
    assert_eq!(said, ["Channel 5 can't be as planned: what the plan has there fired on another."]);
}

#[test]
fn a_channel_that_answers_beyond_those_that_there_are_contradicts_their_count() {
    let name = "firing-entered-bad";
    assert_eq!(told(name, &[], "firing.beyond-count"), [Fault]);
    let said = words(name, &[], "firing.beyond-count");
    assert!(said.contains("cylinder 2 from 5 to 4") && !said.contains("1-2-3-5"), "{said}");
    assert_eq!(told(name, &[("channels.ignition_count", "5")], "firing.beyond-count"), []);
    assert_eq!(told(name, &[("channels.coils_wired.4", "none")], "firing.beyond-count"), []);
}

/// By hand: 450 is 720 less 270.
#[test]
fn a_firing_angle_below_nought_is_counted_back_from_the_first() {
    let twin = |angles| {
        let texts = [("engine.cylinders", "2"), ("engine.order", ""), ("engine.angles", angles)];
        answer(&report(&planned(ODD, &texts)), "engine").verdict.message.text.clone()
    };
    assert_eq!(twin("0 -270"), "Odd-fire: 1-2 at 0° and 450°");
    assert_eq!(twin("0-450"), twin("0 -270"));
}

/// What an answer of an engine or its channels shows in figures and tables: the formulas that it was worked with.
fn formulas(report: &Report, subject: &str) -> Vec<String> {
    let answer = answer(report, subject);
    let figures = answer.figures.iter().flat_map(|it| &it.working);
    let tables = answer.tables.iter().flat_map(|it| &it.working);
    figures.chain(tables).map(|it| format!("{}: {}", it.symbols, it.filled)).collect()
}

/// Any textbook: a four-stroke engine fires once in two turns, a two-stroke engine in one; by even intervals are those angles told that are
/// even.
#[test]
fn angles_are_worked_by_the_engine_that_fires_at_them() {
    let four = formulas(&report(&planned(ODD, &[])), "engine");
    let two = formulas(&report(&planned("firing-two-stroke-leads", &[])), "engine");
    let turns = |found: &[String], n: &str| {
        found.iter().any(|it| it.starts_with("cycle =") && it.contains(&format!("{n} ×")))
    };
    assert!(turns(&four, "2") && !turns(&four, "1"), "{four:?}");
    assert!(turns(&two, "1") && !turns(&two, "2"), "{two:?}");
    let told = |found: &[String], even: bool| {
        found.iter().any(|it| it.contains("(k − 1) × α")) == even
            && found.iter().any(|it| it.contains("θ_next")) != even
    };
    assert!(told(&four, false), "uneven: {four:?}");
    assert!(told(&two, true), "even: {two:?}");
}

fn to_do(report: &Report, subject: &str) -> Vec<&'static str> {
    answer(report, subject).to_do.iter().map(|it| it.code).collect()
}

/// One channel has no order to enter; and only a rotary is told of the coil that two of its leading plugs may share.
#[test]
fn what_is_done_about_the_channels_is_of_this_engine() {
    let ignition = "channels.ignition_mode";
    let six = report(&planned("firing-outputs-shared", &[]));
    assert!(to_do(&six, ignition).contains(&"firing.do-enter"), "{:?}", to_do(&six, ignition));
    let single = report(&planned("sound-single", &[]));
    assert!(
        !to_do(&single, ignition).contains(&"firing.do-enter"),
        "{:?}",
        to_do(&single, ignition)
    );
    let paired = ("channels.ignition_mode", "paired-double");
    for (name, is_rotary) in [("firing-rotary-trailing", true), ("sound-triple", false)] {
        let report = report(&planned(name, &[paired]));
        let found = to_do(&report, ignition);
        assert_eq!(found.contains(&"firing.instead-rotary"), is_rotary, "{name}: {found:?}");
    }
}

/// A plug that fires while its intake valve is open is grave, and so is its row; one that fires where it should has no tone.
#[test]
fn a_row_of_the_table_is_as_grave_as_what_it_tells() {
    let wired = |at: usize| format!("channels.coils_wired.{at}");
    let (first, second) = (wired(0), wired(1));
    let texts = [(first.as_str(), "5"), (second.as_str(), "1")];
    let report = report(&planned("firing-outputs-shared", &texts));
    let tables = report.sections.iter().flat_map(|it| &it.answers).flat_map(|it| &it.tables);
    let table = tables.filter(|it| it.caption.code == "firing.table-wired").collect::<Vec<_>>();
    let tones: Vec<_> = table.iter().flat_map(|it| &it.rows).map(|it| it.tone).collect();
    assert!(
        tones.contains(&Some(Tone::Bad)) && !tones.contains(&Some(Tone::Doubtful)),
        "{tones:?}"
    );
}

/// A spark that comes every turn comes on both strokes: nothing of the stroke is proved by it, and nothing a turn out.
#[test]
fn a_turn_out_is_no_cause_where_each_turn_has_its_spark() {
    let name = "firing-odd-told-even";
    let says = |mode| {
        let texts = [
            ("engine.angles", ""),
            ("controller.spacing", ""),
            ("channels.ignition_mode", mode),
            ("light.seen.1", "10"),
            ("light.seen.3", "10"),
            ("light.seen.5", "10"),
            ("light.stroke", ""),
        ];
        let report = report(&planned(name, &texts));
        let all: Vec<_> = report.sections.iter().flat_map(|it| &it.answers).collect();
        let light = all.iter().find(|it| it.subject.starts_with("light")).expect("it is lit");
        light.verdict.message.code
    };
    let [once, paired, every_turn] = ["sequential", "paired-double", "every-turn"].map(says);
    assert_eq!(paired, every_turn, "both come every turn");
    assert_ne!(once, paired, "one that comes once is a turn out");
}
