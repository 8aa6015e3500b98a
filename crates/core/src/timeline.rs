//! What happens when, in turning things: speeds that repeat, ramps from and to rest, switches that wait for
//! agreement, contacts that take their time.
//!
//! Times are in seconds, angles in degrees, speeds in degrees a second. Nothing here knows what turns.

mod contact;
mod ramp;
mod switch;
mod threshold;
mod wave;

pub use contact::closures;
pub use ramp::{Fall, Rise};
pub use switch::{Switch, SwitchChange};
pub use threshold::{Interval, LetGo, LowestOnceOn, ThresholdReach, highest, without};
pub use wave::{Valley, Valleys, Wave};
