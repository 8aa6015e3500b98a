//! Many circuits in one run of ngspice, and how far apart it and the core are.

use std::{
    env,
    fmt::Write as _,
    fs, io,
    process::{self, Command, Stdio},
};

/// The resistors are those of 20 °C.
pub(crate) const OPTIONS: &str =
    ".options reltol=1e-10 abstol=1e-16 vntol=1e-11 gmin=1e-18 tnom=20";

/// What the simulator printed.
pub(crate) struct Printed(String);

impl Printed {
    /// All that was printed of this, in the order of the circuits.
    pub(crate) fn of(&self, asked: &str) -> Vec<f64> {
        let of = |line: &str| line.strip_prefix(asked)?.strip_prefix(" = ")?.trim().parse().ok();
        self.0.lines().filter_map(of).collect()
    }
}

/// Solves each circuit, and prints what is asked of it.
pub(crate) fn solved<'a>(
    circuits: impl Iterator<Item = (String, &'a [&'a str])>,
) -> io::Result<Printed> {
    let folder = env::temp_dir().join(format!("against-supply-{}", process::id()));
    fs::create_dir_all(&folder)?;
    let mut script = "* run\n.control\nset numdgt=16\n".to_owned();
    for (index, (netlist, asked)) in circuits.enumerate() {
        let name = format!("{index}.cir");
        fs::write(folder.join(&name), netlist)?;
        let prints: String = asked.iter().map(|it| ["print ", it, "\n"].concat()).collect();
        // a string takes what is written
        let _ = writeln!(script, "source {name}\nop\n{prints}destroy all\nremcirc");
    }
    fs::write(folder.join("run.cir"), script + "quit\n.endc\n.end\n")?;
    let mut command = Command::new("ngspice");
    command.args(["-n", "-b", "run.cir"]).current_dir(&folder).stdin(Stdio::null());
    let output = command.output();
    // what is left in a folder for temporary files does no harm
    let _ = fs::remove_dir_all(&folder);
    Ok(Printed(String::from_utf8_lossy(&output?.stdout).into_owned()))
}

/// How far apart two values each are at the most, relative to theirs.
pub(crate) fn apart(pairs: impl Iterator<Item = ([f64; 2], [f64; 2])>) -> [f64; 2] {
    let mut apart = [0.0_f64; 2];
    for (ours, theirs) in pairs {
        for ((apart, ours), theirs) in apart.iter_mut().zip(ours).zip(theirs) {
            let off = (ours / theirs - 1.0).abs();
            // what is no number is infinitely far
            *apart = apart.max(if off.is_nan() { f64::INFINITY } else { off });
        }
    }
    apart
}
