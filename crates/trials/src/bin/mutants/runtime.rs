//! Stands in the copy of the core as `crate::mutant`: what a test run with a mutant switched on sees.
//!
//! `QUIETPIN_MUTANT=7` switches number 7 on. `QUIETPIN_INFECTS=file` switches none on, and writes the number of each mutant that
//! would have made a difference where the program came by, a line each.

use std::{
    env, fs,
    io::Write as _,
    sync::atomic::{AtomicU32, AtomicU64, Ordering::Relaxed},
};

/// None is switched on.
const NONE: u32 = u32::MAX;
/// None is switched on, and differences are written down.
const WATCHING: u32 = u32::MAX - 1;
/// The environment was not asked yet.
const UNASKED: u32 = u32::MAX - 2;

static MODE: AtomicU32 = AtomicU32::new(UNASKED);

/// A bit for each mutant that was seen to make a difference.
static SEEN: [AtomicU64; 256] = [const { AtomicU64::new(0) }; 256];

/// A comparison, and what two mutants make of it: the next number is the other's.
pub(crate) fn pick(id: u32, was: bool, one: bool, other: bool) -> bool {
    match mode() {
        WATCHING => {
            note(id, one != was);
            note(id + 1, other != was);
            was
        }
        on if on == id => one,
        on if on == id + 1 => other,
        _ => was,
    }
}

/// Whether a mutant is on.
pub(crate) fn is_on(id: u32) -> bool {
    let mode = mode();
    note(id, mode == WATCHING);
    mode == id
}

/// A number, or a tenth more or less of it: the next number is the lesser.
pub(crate) fn scaled(id: u32, number: f64) -> f64 {
    match mode() {
        WATCHING => {
            note(id, true);
            note(id + 1, true);
            number
        }
        on if on == id => number * 1.1,
        on if on == id + 1 => number * 0.9,
        _ => number,
    }
}

/// The same of a quantity.
pub(crate) fn scaled_quantity<Q: crate::quantity::Measure>(id: u32, quantity: Q) -> Q {
    let number = quantity.base();
    let scaled = scaled(id, number);
    // a temperature in degrees is not the same to the last digit there and back
    if (scaled - number).abs() > 0.0 { Q::from_base(scaled) } else { quantity }
}

/// A count, or one more.
pub(crate) fn one_more(id: u32, count: usize) -> usize {
    count + usize::from(is_on(id))
}

fn mode() -> u32 {
    match MODE.load(Relaxed) {
        UNASKED => {
            let on = env::var("QUIETPIN_MUTANT").ok().and_then(|it| it.parse().ok());
            let watching = if env::var_os("QUIETPIN_INFECTS").is_some() { WATCHING } else { NONE };
            let mode = on.unwrap_or(watching);
            MODE.store(mode, Relaxed);
            mode
        }
        mode => mode,
    }
}

fn note(id: u32, is_different: bool) {
    if !is_different {
        return;
    }
    let bit = 1_u64 << (id % 64);
    let Some(word) = SEEN.get((id / 64) as usize) else { return };
    if word.load(Relaxed) & bit != 0 || word.fetch_or(bit, Relaxed) & bit != 0 {
        return;
    }
    let Some(path) = env::var_os("QUIETPIN_INFECTS") else { return };
    if let Ok(mut file) = fs::OpenOptions::new().append(true).create(true).open(path) {
        // in one go, so that two processes that a test started do not mix their lines
        let _ = file.write_all(format!("{id}\n").as_bytes());
    }
}
