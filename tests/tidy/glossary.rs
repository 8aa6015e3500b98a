//! One word for one thing: the table, which `tests/GLOSSARY.md` shows, and the rule by which texts are held to it.

/// A thing, its word, and the words that are not used for it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Entry {
    /// Its one word.
    pub(crate) word: &'static str,
    /// What it is, in a short line.
    pub(crate) means: &'static str,
    /// Words not used for it, each in every form.
    pub(crate) never: &'static [&'static str],
    /// Where one of those is right: it means something else there.
    pub(crate) right_in: &'static [&'static str],
}

const fn entry(
    word: &'static str,
    means: &'static str,
    never: &'static [&'static str],
    right_in: &'static [&'static str],
) -> Entry {
    Entry { word, means, never, right_in }
}

/// The table, by what a fitter meets.
pub(crate) const GLOSSARY: &[(&str, &[Entry])] = &[
    (
        "Outputs and loads",
        &[
            entry(
                "output",
                "A pin of the controller that switches something.",
                &["driver pin", "switch pin"],
                &[],
            ),
            entry(
                "output type",
                "Low-side, high-side, half-bridge or logic.",
                &["stage", "stages"],
                &[],
            ),
            entry(
                "low-side",
                "An output that switches to ground; its data sheet may say open-drain.",
                &["open-drain", "open drain"],
                &["low-side, open-drain"],
            ),
            entry("load", "What an output switches.", &["consumer", "consumers"], &[]),
            entry(
                "on, connected to",
                "A load is on an output, a coil on a channel.",
                &["hang", "hangs", "hung", "hanging"],
                &[],
            ),
            entry(
                "other end",
                "The end of a load that is not at its output.",
                &["far end", "far ends"],
                &[],
            ),
            entry(
                "comes on, stays on",
                "What a load does when it works, whatever kind it is.",
                &["acts from", "it acts", "may act", "sure to act", "never acts", "acts when"],
                &[],
            ),
            entry(
                "pulls in, drops out",
                "A relay or a valve as its voltage rises or falls; the data sheet's pull-in and drop-out voltage.",
                &["let go", "lets go", "letting go", "let the relay go"],
                &["let go of the key"],
            ),
            entry(
                "when off",
                "What an output and its load do while the output is not commanded on.",
                &["live at rest", "across it at rest", "rests", "rests open", "unasked"],
                &[],
            ),
            entry(
                "at rest",
                "The battery without load, an hour after it was charged. Nothing else is at rest.",
                &["load at rest", "output at rest"],
                &[],
            ),
            entry(
                "switch-off spike, spike",
                "The voltage of a coil as its current is switched off.",
                &["kick", "kicks", "flyback voltage"],
                &["kick-back", "kick back", "kicks back"],
            ),
            entry(
                "kick-back",
                "The engine turned backwards by a spark too early. Only an engine kicks.",
                &["kickback"],
                &[],
            ),
            entry(
                "band (cathode)",
                "The marked end of a diode.",
                &["stripe", "stripes", "striped"],
                &[],
            ),
            entry(
                "rated for, carries, limit",
                "What a part can take, by its maker or by its data.",
                &["bear", "bears", "bore", "borne", "bearing"],
                &[],
            ),
        ],
    ),
    (
        "Coils, injectors, fuel",
        &[
            entry(
                "wasted spark",
                "A coil fired every turn: one of two sparks falls in the overlap.",
                &["lost spark", "idle spark"],
                &[],
            ),
            entry(
                "sequential",
                "Each coil or injector once a cycle, at its own cylinder's moment.",
                &["in sequence"],
                &[],
            ),
            entry("dwell", "The time for which a coil is charged.", &["charging time"], &[]),
            entry(
                "duty",
                "The share of the time for which something is on.",
                &["of the time that it may be", "part of the time"],
                &[],
            ),
            entry(
                "RMS",
                "The current that heats a fuse or a contact as much as the real one does.",
                &["as it heats", "heated as by", "effective"],
                &[],
            ),
            entry(
                "nominal",
                "With every part as its data sheet has it, at 20 °C.",
                &["as meant"],
                &[],
            ),
            entry(
                "peak-and-hold",
                "A driver that opens an injector with a peak and then holds it with less.",
                &["current-controlled", "driver that controls the current"],
                &[],
            ),
            entry(
                "BSFC",
                "Specific fuel consumption: fuel for each unit of work.",
                &["fuel burnt for"],
                &[],
            ),
            entry(
                "manifold-referenced",
                "A fuel pressure regulator whose pressure follows boost.",
                &["hose to the manifold"],
                &[],
            ),
            entry("in series", "A resistor in the wire of a part.", &["in line with"], &[]),
            entry(
                "connector",
                "Of a wire; a plug is a spark plug.",
                &["injector plug", "injector plugs", "coil plug", "coil plugs"],
                &[],
            ),
        ],
    ),
    (
        "Engine, cranking, at the car",
        &[
            entry(
                "TDC",
                "Top dead centre; firing TDC is the one at which its cylinder fires.",
                &["top dead centre", "top dead centres", "firing top"],
                &["(top dead centre)"],
            ),
            entry(
                "threshold, release",
                "The engine speeds at which a relay is switched on, and off again.",
                &["switched on at", "switched off below"],
                &[],
            ),
            entry(
                "stall time-out",
                "How long no tooth may pass before the engine counts as stopped.",
                &["timeout"],
                &[],
            ),
            entry(
                "gap",
                "The missing teeth of a wheel.",
                &["gap between teeth", "no gap where the starter"],
                &[],
            ),
            entry(
                "swap",
                "Two leads or connectors change places.",
                &["exchange", "exchanges", "exchanged"],
                &[],
            ),
            entry(
                "fires, sparks, clicks",
                "What a coil or an injector does when its channel is fired.",
                &["nothing answers", "coil answers", "injector answers", "cylinder answers"],
                &[],
            ),
            entry("test", "One channel fired at the car, and what was seen.", &["taps"], &[]),
            entry(
                "fix",
                "What puts a fault right.",
                &["cure", "cures", "cured", "remedy", "remedies"],
                &[],
            ),
            entry(
                "ground",
                "The block, the body, the battery's minus.",
                &["earth", "earthed", "chassis ground"],
                &[],
            ),
            entry("harness", "The wires and their connectors.", &["loom", "looms"], &[]),
        ],
    ),
    (
        "What is said of a plan",
        &[
            entry(
                "Check",
                "The badge of a finding that a person should look into; its code is `doubt`.",
                &["doubt", "doubts"],
                &[],
            ),
            entry(
                "assumed",
                "What stands in the place of a blank.",
                &["taken", "taken as", "not said"],
                &[],
            ),
            entry(
                "case, worst case",
                "One set of supply, temperature and tolerances; the one that decides.",
                &["corner", "corners"],
                &[],
            ),
            entry("needed", "What is not enough or not there yet.", &["wanted", "is wanting"], &[]),
            entry("0", "A number; with its unit.", &["nought", "noughts"], &[]),
            entry(
                "type",
                "Put a text into Quietpin. Enter: put it into the controller. They are kept apart.",
                &["type in the controller", "enter in quietpin", "key in"],
                &[],
            ),
            entry(
                "correct",
                "Put right what was typed; a part is repaired.",
                &["mend", "mends", "mended"],
                &[],
            ),
            entry("again", "Once more.", &["anew"], &[]),
            entry("100 °C hotter", "A difference of temperature.", &["k hotter"], &[]),
            entry(
                "Ω, kΩ",
                "The sign in all that is shown; ohm, kohm and mohm are what a fitter types.",
                &["kilohm", "kilohms", "megohm"],
                &[],
            ),
        ],
    ),
];

/// The words of a text that the table does not have it use, each with the word that it has.
pub(crate) fn strayed(text: &str) -> Vec<String> {
    let text = plain(text);
    let entries = GLOSSARY.iter().flat_map(|(_, entries)| *entries);
    let mut found = Vec::new();
    for entry in entries {
        let rest = entry.right_in.iter().fold(text.clone(), |text, it| text.replace(it, "…"));
        for never in entry.never.iter().filter(|never| has_word(&rest, never)) {
            found.push(format!("not “{never}” but “{}”", entry.word));
        }
    }
    found
}

/// What is written otherwise than everywhere else: signs, not words.
pub(crate) fn miswritten(text: &str) -> Vec<&'static str> {
    let text = plain(text);
    let mut found = Vec::new();
    if text.contains('’') {
        found.push("one apostrophe: '");
    }
    let before = |sign: &str| {
        let is_unit = |left: &str, right: &str| {
            left.ends_with(|c: char| c.is_ascii_digit()) && !right.starts_with(char::is_alphabetic)
        };
        around(&text, sign, is_unit)
    };
    if before(" %") {
        found.push("80%, without a blank");
    }
    // as a fitter types it
    let is_typed = text.chars().all(|c| c.is_ascii_digit() || ". tohmkdegu2s".contains(c));
    let signs = [
        ("Ω, not ohm", &[" ohm", " kohm", " mohm"][..]),
        ("mm², not mm2", &[" mm2"]),
        ("µs, not us", &[" us"]),
        ("90°, not 90 deg", &[" deg"]),
    ];
    let is_miswritten = |typed: &[&str]| !is_typed && typed.iter().any(|it| before(it));
    found.extend(signs.iter().filter(|(_, typed)| is_miswritten(typed)).map(|(sign, _)| *sign));
    found
}

/// In small letters, without the names of its gaps: what stands in a gap is not the sentence's.
fn plain(text: &str) -> String {
    let mut plain = String::new();
    for (at, part) in text.split(['{', '}']).enumerate() {
        let is_gap = at % 2 == 1;
        // `{n|plug|plugs}` says both
        let said = if is_gap {
            part.split('|').skip(1).collect::<Vec<_>>().join(" … ")
        } else {
            part.into()
        };
        plain.push_str(&said);
    }
    plain.to_lowercase()
}

/// Whether a text has a word, or several one after the other, as words of their own.
fn has_word(text: &str, word: &str) -> bool {
    let is_end = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric());
    around(text, word, |left, right| {
        is_end(left.chars().next_back()) && is_end(right.chars().next())
    })
}

/// Whether a text has a part with this on its left and its right.
fn around(text: &str, part: &str, is_so: impl Fn(&str, &str) -> bool) -> bool {
    let pieces: Vec<_> = text.split(part).collect();
    pieces.windows(2).any(|it| matches!(it, [left, right] if is_so(left, right)))
}

#[test]
fn a_planted_word_is_found() {
    let none: [&str; 0] = [];
    assert_eq!(strayed("The pump hangs on D3."), ["not “hangs” but “on, connected to”"]);
    assert_eq!(strayed("Hang it there"), ["not “hang” but “on, connected to”"]);
    assert_eq!(strayed("It changes, with no overhang."), none, "within another word");
    assert_eq!(
        strayed("{hangs} of {n|kick|kicks}").len(),
        2,
        "both ways of saying it, no gap's name"
    );
    assert_eq!(
        strayed("A spark makes it kick back: let go of the key."),
        none,
        "where it is right"
    );
    assert_eq!(strayed("Let go of it").len(), 1);
    assert_eq!(strayed("At {corner}: 10% is wanted."), ["not “wanted” but “needed”"]);
    assert_eq!(miswritten("80 % of it"), ["80%, without a blank"]);
    assert_eq!(miswritten("the relay’s coil"), ["one apostrophe: '"]);
    assert_eq!(miswritten("2 ohm in series, 1 mm2"), ["Ω, not ohm", "mm², not mm2"]);
    assert_eq!(miswritten("5 to 20 kohm"), none, "as it is typed");
    assert_eq!(miswritten("80% of 2 Ω; it's 4 mm²"), none);
}
