use super::*;
use Side::{Left, Right};

const ALL: [Numbering; 8] = [
    Numbering::InLine(EngineEnd::Front),
    Numbering::InLine(EngineEnd::Flywheel),
    Numbering::BankByBank(EngineEnd::Front, Left),
    Numbering::BankByBank(EngineEnd::Front, Right),
    Numbering::BankByBank(EngineEnd::Flywheel, Left),
    Numbering::BankByBank(EngineEnd::Flywheel, Right),
    Numbering::Alternating(Left),
    Numbering::Alternating(Right),
];

#[track_caller]
fn check_banks(numbering: Numbering, expected: &[&[u32]]) {
    let banks = numbering.banks(6).expect("six in two banks");
    assert_eq!(banks, expected.iter().map(|it| it.to_vec()).collect::<Vec<_>>(), "{numbering:?}");
}

#[test]
fn banks_run_from_front_to_rear_whichever_end_is_counted_from() {
    check_banks(Numbering::InLine(EngineEnd::Flywheel), &[&[6, 5, 4, 3, 2, 1]]);
    check_banks(Numbering::BankByBank(EngineEnd::Front, Left), &[&[1, 2, 3], &[4, 5, 6]]);
    check_banks(Numbering::BankByBank(EngineEnd::Flywheel, Left), &[&[3, 2, 1], &[6, 5, 4]]);
    check_banks(Numbering::Alternating(Right), &[&[1, 3, 5], &[2, 4, 6]]);
}

/// DIN 73021 and TGL 6864 by their rules: from the flywheel, the left bank is the one on the right from the front.
#[test]
fn left_from_the_flywheel_is_right_from_the_front() {
    let din = Numbering::BankByBank(EngineEnd::Front, Left);
    let tgl = Numbering::BankByBank(EngineEnd::Flywheel, Left);
    let here: Vec<_> =
        tgl.into_other(din, 8).expect("one engine").into_iter().map(|it| it.here).collect();
    assert_eq!(here, [8, 7, 6, 5, 4, 3, 2, 1], "the last from one end is the first from the other");
}

#[test]
fn there_and_back_every_cylinder_keeps_its_number() {
    for (one, other) in ALL.into_iter().flat_map(|one| ALL.map(|other| (one, other))) {
        for cylinders in 1..=16 {
            let (Ok(there), Ok(back)) =
                (one.into_other(other, cylinders), other.into_other(one, cylinders))
            else {
                let is_odd = cylinders % 2 == 1 && (one.has_two_banks() || other.has_two_banks());
                assert!(
                    is_odd || one.has_two_banks() != other.has_two_banks(),
                    "{one:?} {other:?}"
                );
                continue;
            };
            assert_eq!(
                there.len(),
                usize::try_from(cylinders).expect("small"),
                "{one:?} {other:?}"
            );
            for it in there {
                let back = back.iter().find(|back| back.there == it.here).expect("numbered");
                assert_eq!((back.here, back.place), (it.there, it.place), "{one:?} {other:?}");
            }
        }
    }
}

#[test]
fn what_can_not_be_one_engine_is_refused() {
    let (line, banks) = (Numbering::InLine(EngineEnd::Front), Numbering::Alternating(Left));
    assert_eq!(line.into_other(banks, 6), Err(Unsuited::OtherLayout));
    assert_eq!(banks.places(5), Err(Unsuited::OddCount));
}
