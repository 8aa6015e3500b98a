use quietpin_core::{
    plan::{Load, Output, Plan},
    report,
};
fn main() {
    for (name, stage, level, far, up) in [
        ("clean", "open-drain", "", "ignition", ""),
        ("bad", "half-bridge", "ground", "ground", ""),
        ("bad30", "half-bridge", "ground", "battery", ""),
        ("unknown", "half-bridge", "", "ground", ""),
        ("pullup", "high-side", "", "ground", "2.2k"),
    ] {
        let mut plan = Plan::default();
        for i in 0..40 {
            plan.outputs.push(Output {
                name: format!("O{i}"),
                stage: stage.into(),
                on_level: level.into(),
                pull_up: up.into(),
                current_limit: "5 A".into(),
                ..Default::default()
            });
            plan.loads.push(Load {
                name: format!("L{i}"),
                output: format!("O{i}"),
                far_end: far.into(),
                ..Default::default()
            });
        }
        let n = 20;
        report::report(&plan);
        let t = cpu();
        for _ in 0..n {
            std::hint::black_box(report::report(&plan));
        }
        println!("{name}: {:?} each", (cpu() - t) / n);
    }
    let plan = Plan::default();
    let t = cpu();
    for _ in 0..20 {
        std::hint::black_box(report::report(&plan));
    }
    println!("blank: {:?}", (cpu() - t) / 20);
}
fn cpu() -> std::time::Duration {
    let s = std::fs::read_to_string("/proc/self/schedstat").unwrap();
    std::time::Duration::from_nanos(s.split(' ').next().unwrap().parse().unwrap())
}
