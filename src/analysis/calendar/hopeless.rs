//! Which calendars are dropped after a few members.

use super::score::Score;
use super::wish::Terms;

/// Hopeless is what would have to be luckier than this many standard errors (a judgement, no source).
const ERRORS: f64 = 2.0;

/// Whether a calendar can hardly keep what must hold on so many members, given its first ones and how the best did on
/// all.
///
/// ```text
/// expected = hold of the best + (n/few) · (gained − lost)        error = (n/few) · √(gained + lost) · √(1 − few/n)
/// ```
/// gained and lost are members that hold with one of the two alone.
pub(super) fn falls_short(
    few: &Score,
    best: Option<&Score>,
    terms: &Terms,
    members: usize,
) -> bool {
    let most = few.hold + members - few.members;
    if 100 * most < terms.keep_of_100 * members {
        return true;
    }
    let Some(best) = best else {
        return false;
    };
    let pairs = || few.holds.iter().zip(&best.holds);
    let gained = pairs().filter(|(own, its)| **own && !**its).count() as f64;
    let lost = pairs().filter(|(own, its)| !**own && **its).count() as f64;
    let (n, seen) = (members as f64, few.members.max(1) as f64);
    let expected = best.hold as f64 + n / seen * (gained - lost);
    let error = n / seen * ((gained + lost) * (1.0 - seen / n)).sqrt();
    let needed = terms.keep_of_100 as f64 * n / 100.0;
    expected + ERRORS * error < needed
}
