//! The title of a lesson's chart: the result of the step, and how sure it is.

use crate::analysis::lesson::claim::Unsupported;
use crate::analysis::lesson::fact::READY_OF_100;
use crate::analysis::lesson::taught::Taught;
use crate::output::lesson::words::{Telling, value};
use crate::output::text::words::capital;

/// What parts the result from what follows of it.
const PARTS: &str = "; ";

/// What a headline holds that counts plausible tanks itself.
const COUNTED: &str = "of 100 plausible";

/// Titles and sentences, the longest first.
///
/// # Errors
/// When the numbers of the step support no headline.
pub fn of(taught: &Taught<'_>, step: usize) -> Result<(Vec<String>, Vec<String>), Unsupported> {
    let telling = Telling::of(taught, step);
    let headline = capital(&telling.claim(&taught.headline(step)?)?);
    let sure = how_sure(taught, step, &headline);
    Ok(match headline.split_once(PARTS) {
        Some((result, rest)) => {
            let rest = capital(rest);
            let longer = format!("{rest}. {sure}");
            let shorter = format!("{rest}. The curves are those of the central run.");
            (
                titles(taught, result),
                vec![longer, shorter, format!("{rest}.")],
            )
        }
        None => (titles(taught, &headline), vec![sure]),
    })
}

/// What follows a mean in a result; a shorter title does without.
const MEAN: &str = ", on the mean of";

/// The result, in full and without what its mean is made of.
fn titles(taught: &Taught<'_>, result: &str) -> Vec<String> {
    let shorter = result.split_once(MEAN).map(|(shorter, _)| shorter.into());
    let lesson = taught.lesson.title.into();
    [Some(result.into()), shorter, Some(lesson)]
        .into_iter()
        .flatten()
        .collect()
}

/// Whose curves they are, and what becomes of the others.
fn how_sure(taught: &Taught<'_>, step: usize, headline: &str) -> String {
    let asked = taught.lesson.facts.iter();
    if !asked.clone().any(|fact| fact.key == READY_OF_100.key) {
        return "The curves are those of the central run; yours differs.".into();
    }
    if headline.contains(COUNTED) {
        return format!(
            "The curves are those of the central run; {} plausible ones were run beside it.",
            taught.common.members
        );
    }
    let of_100 = |step| value(&READY_OF_100, &taught.seen(step)).unwrap_or_default();
    let last = taught.steps[step].case.input.last_day;
    let words = format!(
        "The curves are those of the central run; of 100 plausible ones ({} were run) {} are ready by day {last}",
        taught.common.members,
        of_100(step)
    );
    match taught.lesson.base {
        base if base == step => format!("{words}."),
        base => format!(
            "{words}, with {} {}.",
            taught.lesson.steps[base].label,
            of_100(base)
        ),
    }
}
