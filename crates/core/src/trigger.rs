//! Crank and cam sensors against the inputs that they are wired to.
//!
//! **Model.** Teeth pass evenly between neighbours; a gap leaves some out. A variable-reluctance sensor is a source whose
//! peak rises with speed (the law of induction: the flux is the same, it changes sooner) behind the resistance of its
//! coil; its inductance is left out, which makes the voltage at high speed an upper bound. A Hall sensor is a switch to its
//! own ground, which may lie above the controller's, with a pull-up; one that drives both ways has a second switch in its
//! place.

pub mod hall;
pub mod offset;
pub mod reluctance;
pub mod wheel;
