//! The simulator as a process: many circuits a run.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};
use std::{env, fs, io, process};

use crate::circuit::{Answer, Circuit};
use crate::netlist;

/// So many circuits share the simulator's start. It forgets each before the next.
const BATCH: usize = 250;

const MISSING: &str = "ngspice is missing. Install it, for instance with `apt-get install ngspice`, so that `ngspice` \
                       is on the path.";

/// The simulator, and a folder for its netlists that goes away with it.
#[derive(Debug)]
pub(crate) struct Simulator {
    folder: PathBuf,
    /// What it calls itself: `ngspice-39`.
    pub(crate) version: String,
    /// What it takes for `k T / q` at 27 degrees Celsius.
    pub(crate) thermal_v: f64,
    /// How long it has run, and how often it was started.
    pub(crate) time: Duration,
    pub(crate) starts: usize,
}

impl Simulator {
    /// Finds it, and asks for its version and its constants.
    pub(crate) fn start() -> Result<Self, String> {
        let about = Command::new("ngspice").arg("--version").stdin(Stdio::null()).output();
        let about = about.map_err(|error| match error.kind() {
            io::ErrorKind::NotFound => MISSING.to_owned(),
            _ => format!("ngspice does not start: {error}"),
        })?;
        let about = String::from_utf8_lossy(&about.stdout).into_owned();
        let version = about.split_whitespace().find(|word| word.starts_with("ngspice-"));
        let folder = env::temp_dir().join(format!("against-ngspice-{}", process::id()));
        fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
        let mut simulator = Self {
            folder,
            version: version.unwrap_or("ngspice, of no version").to_owned(),
            thermal_v: 0.0,
            time: Duration::ZERO,
            starts: 0,
        };
        simulator.thermal_v = simulator.measured_thermal_v()?;
        Ok(simulator)
    }

    /// One ampere through a diode of `n = 1` drops `VT ln(1 + 1 / Is)`.
    fn measured_thermal_v(&self) -> Result<f64, String> {
        let saturation_a = 1e-12_f64;
        let diode = format!(
            "* diode\nI1 0 1 1\nD1 1 0 M\n.model M D(IS={saturation_a:e} N=1)\n.options reltol=1e-12\n.end\n"
        );
        self.write("diode.cir", &diode)?;
        let printed = self.run(
            "* run\n.control\nset numdgt=16\nsource diode.cir\nop\nprint v(1)\nquit\n.endc\n.end\n",
        )?;
        let drop =
            printed.lines().find_map(|line| line.strip_prefix("v(1) = ")?.trim().parse().ok());
        let drop: f64 = drop.ok_or("ngspice does not say the voltage of a diode")?;
        Ok(drop / (1.0 / saturation_a).ln_1p())
    }

    /// The operating points of all circuits; what floats can be pinned down, or left as it is.
    pub(crate) fn solve(
        &mut self,
        circuits: &[&Circuit],
        is_pinned: bool,
    ) -> Result<Vec<Answer>, String> {
        let mut answers = Vec::with_capacity(circuits.len());
        for batch in circuits.chunks(BATCH) {
            let mut script = "* run\n.control\nset numdgt=16\n".to_owned();
            for (number, circuit) in batch.iter().enumerate() {
                let name = format!("{number}.cir");
                self.write(&name, &netlist::netlist(circuit, is_pinned))?;
                // A string takes what is written.
                let _ = write!(script, "echo {}\nsource {name}\nop\n", mark(number));
                let _ = write!(script, "{}destroy all\nremcirc\n", netlist::prints(circuit));
            }
            script.push_str("quit\n.endc\n.end\n");
            let start = Instant::now();
            let printed = self.run(&script)?;
            self.time += start.elapsed();
            self.starts += 1;
            answers.extend(batch.iter().enumerate().map(|(number, circuit)| {
                let after = printed.split_once(&mark(number)).map_or("", |(_, after)| after);
                let own = after.split_once(&mark(number + 1)).map_or(after, |(own, _)| own);
                netlist::answer(circuit, own)
            }));
        }
        Ok(answers)
    }

    fn write(&self, name: &str, text: &str) -> Result<(), String> {
        let path = self.folder.join(name);
        fs::write(&path, text).map_err(|error| format!("{}: {error}", path.display()))
    }

    /// Runs a script to its end, and gives what it printed.
    fn run(&self, script: &str) -> Result<String, String> {
        self.write("run.cir", script)?;
        let output = command(&self.folder).output();
        let output = output.map_err(|error| format!("ngspice does not run: {error}"))?;
        Ok(String::from_utf8_lossy(&output.stdout).into_owned())
    }
}

impl Drop for Simulator {
    fn drop(&mut self) {
        // What is left in a folder for temporary files does no harm.
        let _ = fs::remove_dir_all(&self.folder);
    }
}

/// `-n` keeps it from reading a start-up file of the user's own.
fn command(folder: &Path) -> Command {
    let mut command = Command::new("ngspice");
    command.args(["-n", "-b", "run.cir"]).current_dir(folder).stdin(Stdio::null());
    command
}

/// Stands before the answer of a circuit.
fn mark(number: usize) -> String {
    format!("circuit {number} begins")
}
