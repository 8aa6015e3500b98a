//! How each output rests, in every state of the key.

use quietpin_core::finding::Severity::{Danger, Doubt, Fault};

use super::{told, words};

const OUTLIVES: &str = "outputs-outlives-key";
const DRIVES: &str = "outputs.drives-dead-feed";

/// By hand: through a diode of 0.7 V + 0.05 Ω and a switch of 0.1 Ω (0.076 Ω at -20 °C) into the 5 Ω that hang on 15: (14.8 - 0.7)
/// / 5.13 = 2.75 A.
#[test]
fn a_controller_that_outlives_the_key_drives_its_resting_outputs_into_dead_feeds() {
    assert_eq!(told(OUTLIVES, &[], DRIVES), [Fault]);
    assert!(words(OUTLIVES, &[], DRIVES).contains("2.75 A"));
    let dies = [("controller.after_key_off", "dies")];
    assert_eq!(told(OUTLIVES, &dies, DRIVES), [], "its supply falls with the key");
    let rests_low = [("outputs.0.on_level", "battery"), ("relays.0.far_end", "ground")];
    assert_eq!(told(OUTLIVES, &rests_low, DRIVES), []);
    let open = [("outputs.0.stage", "open-drain"), ("outputs.0.on_level", "")];
    assert_eq!(told(OUTLIVES, &open, DRIVES), [], "it rests open");
}

/// More than the output bears, whenever the key is turned off: (14.8 - 0.7) / 5.13 = 2.75 A.
#[test]
fn what_an_output_drives_into_a_dead_feed_counts_against_its_limit() {
    assert_eq!(told(OUTLIVES, &[], "outputs.too-much-current"), []);
    let weak = [("outputs.0.current_limit", "2 A")];
    assert_eq!(told(OUTLIVES, &weak, "outputs.too-much-current"), [Danger]);
}

/// Without a diode the coil itself lies between the pin and what hangs on 15: 14.8 V × 90 / (90 + 5 + 0.1) = 14 V.
#[test]
fn a_load_between_a_resting_output_and_its_dead_feed_acts_as_long_as_the_controller_lives() {
    let bare = [("relays.0.suppression", "none")];
    assert_eq!(told(OUTLIVES, &bare, "outputs.live-outlived"), [Fault]);
    let fed = [("relays.0.suppression", "none"), ("relays.0.far_end", "battery")];
    assert_eq!(told(OUTLIVES, &fed, "outputs.live-outlived"), [], "both its ends stay at battery");
}

#[test]
fn where_it_is_not_known_whether_the_controller_outlives_the_key_that_is_a_doubt() {
    let unknown = ("controller.after_key_off", "");
    assert_eq!(told(OUTLIVES, &[unknown], "outputs.perhaps-drives-dead-feed"), [Doubt]);
    let bare = ("relays.0.suppression", "none");
    assert_eq!(told(OUTLIVES, &[unknown, bare], "outputs.perhaps-live-outlived"), [Doubt]);
    assert_eq!(told(OUTLIVES, &[unknown], DRIVES), []);
}
