use quietpin_core::{output::*, quantity::*};
fn main() {
    let corner = SupplyCorner {
        name: "x",
        supply: volts(12.6),
        temperature: celsius(20.0),
        is_cranking: false,
    };
    let around = Surroundings {
        corners: vec![corner],
        nominal: corner,
        dead_rail: Band::exact(ohms(47.0)),
        dead_feed: Band::exact(ohms(47.0)),
    };
    for (stage, far) in [(Stage::OpenDrain, FarEnd::Ignition), (Stage::HalfBridge, FarEnd::Battery)]
    {
        for pull in [None, Some((Band::exact(ohms(2200.0)), PullRail::Battery))] {
            let mut output = Output::plain(stage);
            output.pull_up = pull.clone();
            let w = Wiring { output, level: OnLevel::Ground, loads: vec![Load::relay_coil(far)] };
            for state in KeyState::ALL {
                let p = Point::nominal(corner, 0, Contact::Closed);
                let t = std::time::Instant::now();
                for _ in 0..20000 {
                    std::hint::black_box(operate(&w, state, &p, &around));
                }
                println!(
                    "{stage:?} {far:?} {} {state:?} {:?}",
                    pull.is_some(),
                    t.elapsed() / 20000
                );
            }
        }
    }
}
