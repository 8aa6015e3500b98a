//! A contact that follows its command late.

use super::SwitchChange;

/// When a contact is closed, from and to, given the changes of its command (off at first) and the end of the
/// watch.
///
/// It closes `pull_in_s` after it is told to, and opens `drop_out_s` after, unless it is told otherwise before:
/// an armature that is still on its way turns round.
pub fn closures(
    changes: &[SwitchChange],
    pull_in_s: f64,
    drop_out_s: f64,
    end_s: f64,
) -> Vec<(f64, f64)> {
    let mut closures = Vec::new();
    let mut closed_since: Option<f64> = None;
    for (at, change) in changes.iter().enumerate() {
        let until_s = changes.get(at + 1).map_or(f64::INFINITY, |next| next.time_s);
        let acts_s = change.time_s + if change.is_on { pull_in_s } else { drop_out_s };
        if acts_s > until_s || acts_s > end_s {
            continue;
        }
        if change.is_on {
            closed_since = closed_since.or(Some(acts_s));
        } else if let Some(since) = closed_since.take() {
            closures.push((since, acts_s));
        }
    }
    closures.extend(closed_since.map(|since| (since, end_s)));
    closures
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(changes: &[(f64, bool)], expected: &[(f64, f64)]) {
        let changes: Vec<_> =
            changes.iter().map(|&(time_s, is_on)| SwitchChange { time_s, is_on }).collect();
        assert_eq!(closures(&changes, 2.0, 1.0, 20.0), expected, "{changes:?}");
    }

    #[test]
    fn a_contact_follows_late() {
        check(&[], &[]);
        check(&[(1.0, true)], &[(3.0, 20.0)]);
        check(&[(1.0, true), (5.0, false)], &[(3.0, 6.0)]);
        check(&[(1.0, true), (5.0, false), (9.0, true)], &[(3.0, 6.0), (11.0, 20.0)]);
    }

    #[test]
    fn a_command_that_is_taken_back_in_time_does_nothing() {
        check(&[(1.0, true), (2.5, false)], &[]);
        check(&[(1.0, true), (5.0, false), (5.5, true)], &[(3.0, 20.0)]);
        check(&[(19.0, true)], &[]);
    }
}
