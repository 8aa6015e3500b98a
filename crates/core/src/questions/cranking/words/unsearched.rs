//! The sentences of what is not searched, because it would take too long.

use crate::words::{Explanation, sentences};

sentences! {
    OPEN_UNSEARCHED = "cranking.open-unsearched",
        "Not searched: too many teeth to follow";
    UNSEARCHED_WHY = "cranking.unsearched-why",
        "The engine is followed tooth by tooth, from all round the cycle, in every case of what was typed: {teeth} million teeth are more than this answer may take.";
    UNSEARCHED = "cranking.unsearched",
        "{field}: {value} makes {teeth} million teeth to follow, too many. Which thresholds work is not known.";
    NOT_ALL_TRIED = "cranking.not-all-tried",
        "{field}: {value} makes so many teeth to follow that not all was tried. A better threshold, or what other starts and false edges do, may be missing here.";
    SEARCH_SHORTER = "cranking.search-shorter",
        "{field}: searched up to {value}.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: UNSEARCHED.code,
        // Following every start, or the engine as it stops, takes more counted steps than the answer may spend.
        why: "A page that followed them all would freeze for minutes. Nothing here says that the relay is right.",
        act: "Check that time: a starter takes about a third of a second. A range doubles the cases: type one number for speed, dip and times. Plan fewer relays at once.",
        source: "a bound on counted work, so that every machine gives the same answer",
    },
    Explanation {
        code: NOT_ALL_TRIED.code,
        // The answer itself was searched; other thresholds, starts that go otherwise or false edges would be too much.
        why: "What is said here holds, but it is not all that could be said.",
        act: "Type one number instead of a range, fewer readings in a row or fewer teeth in one reading, or plan fewer relays at once.",
        source: "a bound on counted work, so that every machine gives the same answer",
    },
];
