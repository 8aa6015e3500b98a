//! Whether the fuse before a relay's contact protects what lies behind it.

use crate::{
    fields::relays,
    finding::{Finding, Severity},
    quantity::{Current, Measure},
    questions::outputs::words,
    read::Reader,
    say, say_of,
    schema::Key,
    tables::{
        fuses::{self, Unprotected},
        wires,
    },
};

/// Tells of a relay whose wire or contact burns before its fuse blows. What can't be read is told where it is asked for.
pub(crate) fn tell(reader: &mut Reader<'_>, at: usize, name: &str) {
    let rating = |key: Key<Current>| reader.band_elsewhere(key.at(at)).map(|band| band.nominal);
    let (fuse, contact) = (rating(relays::FUSE), rating(relays::RATING));
    let wire = reader.band_elsewhere(relays::LEAD_SIZE.at(at)).map(|band| band.nominal);
    let Some(fuse) = fuse else { return };
    let of_wire = |wording, bears: Current| {
        say_of!(
            wording,
            relay = name.to_owned(),
            fuse = fuse,
            bears = bears,
            passes = fuse * fuses::HOLDS
        )
    };
    let (severity, message) = match fuses::unprotected(fuse, contact, wire) {
        None => return,
        Some(Unprotected::Wire(bears)) => (Severity::Danger, of_wire(words::FUSE_OVER_WIRE, bears)),
        Some(Unprotected::WireBarely(bears)) => {
            (Severity::Doubt, of_wire(words::FUSE_NEAR_WIRE, bears))
        }
        Some(Unprotected::Contact(rating)) => (
            Severity::Fault,
            say!(words::FUSE_OVER_CONTACT, relay = name.to_owned(), fuse = fuse, rating = rating),
        ),
    };
    let key = relays::FUSE.at(at);
    let smaller = fuses::largest(contact, wire).map(|fuse| {
        let edit = key.edit(fuse.show().into_shown());
        say!(words::DO_SMALLER_FUSE, fuse = fuse).done_by(vec![edit])
    });
    let thin = matches!(severity, Severity::Danger | Severity::Doubt);
    let thicker = wires::smallest_for(fuse * fuses::HOLDS).filter(|_| thin).map(|size| {
        let edit = relays::LEAD_SIZE.at(at).edit(size.show().into_shown());
        say!(words::DO_THICKER_WIRE, size = size).done_by(vec![edit])
    });
    let larger = thicker.unwrap_or_else(|| say!(words::DO_LARGER_BEHIND));
    let cures = smaller.into_iter().chain([larger]);
    reader.remark(Finding::new(severity, key, message).cured_by(cures));
}
