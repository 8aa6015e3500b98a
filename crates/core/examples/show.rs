use quietpin_core::{plan, report};
fn main() {
    for path in std::env::args().skip(1) {
        let plan = plan::parse(&std::fs::read_to_string(&path).unwrap()).unwrap();
        let report = report::report(&plan);
        println!("===== {path}");
        let section = report.sections.iter().find(|s| s.id == "rest").unwrap();
        for a in &section.answers {
            println!(
                "--- {} [{:?}] {}",
                a.title.as_ref().map_or("", |t| &t.text),
                a.verdict.tone,
                a.verdict.message.text
            );
            if let Some(w) = &a.why {
                println!("  why: {}", w.text);
            }
            for t in &a.to_do {
                println!("  do: {}", t.text);
            }
            for t in &a.cautions {
                println!("  caution: {}", t.text);
            }
            for f in &a.figures {
                println!(
                    "  fig: {} = {} [{} .. {}]",
                    f.label.text,
                    f.value.shown,
                    f.low.as_ref().map_or("", |v| &v.shown),
                    f.high.as_ref().map_or("", |v| &v.shown)
                );
                for s in &f.working {
                    println!("       {} = {} = {}", s.symbols, s.filled, s.result.shown);
                }
            }
            for t in &a.tables {
                println!("  table: {}", t.caption.text);
                for r in &t.rows {
                    println!(
                        "     {:?} {}",
                        r.tone,
                        r.cells.iter().map(|c| c.shown.clone()).collect::<Vec<_>>().join(" | ")
                    );
                }
            }
            for p in &a.pictures {
                if let report::Picture::Circuit(c) = p {
                    println!("  pic: {}", c.caption.text);
                    for s in &c.states {
                        println!(
                            "     {} {:?} {} pin={:?} far={:?} rail={:?} {:?}",
                            s.state,
                            s.tone,
                            s.summary.text,
                            s.pin.as_ref().map(|v| &v.shown),
                            s.far.as_ref().map(|v| &v.shown),
                            s.rail.as_ref().map(|v| &v.shown),
                            s.currents
                                .iter()
                                .map(|b| format!("{} {}", b.part, b.current.shown))
                                .collect::<Vec<_>>()
                        );
                    }
                }
            }
        }
        for f in &report.findings {
            println!(
                "  finding {:?} {} {:?}: {} | {:?}",
                f.severity,
                f.subject,
                f.holds,
                f.message.text,
                f.remedies.len()
            );
        }
    }
}
