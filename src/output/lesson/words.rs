//! Templates of claims and notes filled with the numbers of a run.

use crate::analysis::lesson::claim::{Decided, Number, Unsupported};
use crate::analysis::lesson::fact::{self, Fact, Seen};
use crate::analysis::lesson::taught::Taught;
use crate::output::chart::words::number;
use crate::output::text::words::capital;

/// Up to so many times a limit is just over it: two people read one card as far apart.
const JUST_OVER: f64 = 1.2;

/// A step beside the one it is held against, with both in words.
#[derive(Debug, Clone, Copy)]
pub struct Telling<'a> {
    /// The numbers.
    pub seen: Seen<'a>,
    /// The step in words.
    pub step: &'static str,
    /// The other one in words.
    pub base: &'static str,
    /// How many plausible tanks were run.
    pub members: usize,
}

impl<'a> Telling<'a> {
    /// A step of a lesson.
    pub fn of(taught: &'a Taught<'_>, step: usize) -> Telling<'a> {
        let lesson = taught.lesson;
        Telling {
            seen: taught.seen(step),
            step: lesson.steps[step].label,
            base: lesson.steps[lesson.base].label,
            members: taught.common.members,
        }
    }
    /// The words of a claim, filled.
    ///
    /// # Errors
    /// When they name a number that is not there.
    pub fn claim(&self, decided: &Decided) -> Result<String, Unsupported> {
        let cause = self.cause(decided)?;
        let own = |name: &str| match name {
            "cause" => cause.clone(),
            "left" => read(decided.claim.left, &self.seen),
            "right" => read(decided.claim.right, &self.seen),
            "by" => by(decided),
            "error" => error(decided),
            "over" => over(decided),
            "times" => times(decided),
            _ => None,
        };
        let filled = self.filled(decided.words, own);
        filled.map_err(|name| Unsupported {
            claim: decided.claim.key,
            step: self.seen.step.key.clone(),
            left: format!("{{{name}}}"),
            right: "nothing to put there".into(),
        })
    }
    /// The words of its cause; none where it names none.
    fn cause(&self, decided: &Decided) -> Result<Option<String>, Unsupported> {
        let named = decided.words.contains("{cause}");
        let cause = decided.claim.cause.filter(|_| named);
        cause
            .map(|cause| self.claim(&cause.decide(&self.seen)?))
            .transpose()
    }
    /// A template filled with `own` words, the names of both steps, and facts of either.
    ///
    /// # Errors
    /// The name of the first thing that is not there.
    pub fn filled(
        &self,
        template: &str,
        own: impl Fn(&str) -> Option<String>,
    ) -> Result<String, String> {
        let mut words = String::new();
        let mut rest = template;
        while let Some((before, after)) = rest.split_once('{') {
            words += before;
            let (name, after) = after.split_once('}').ok_or_else(|| after.to_string())?;
            words += &own(name)
                .or_else(|| self.named(name))
                .ok_or_else(|| name.to_string())?;
            rest = after;
        }
        Ok(words + rest)
    }
    fn named(&self, name: &str) -> Option<String> {
        match (name, name.strip_prefix("base.")) {
            ("step", _) => Some(self.step.to_string()),
            ("base", _) => Some(self.base.to_string()),
            ("members", _) => Some(self.members.to_string()),
            ("day", _) => Some(self.seen.day.to_string()),
            (_, Some(of_base)) => value(fact::find(of_base)?, &self.seen.at_base()),
            _ => value(fact::find(name)?, &self.seen),
        }
    }
}

/// A fact in words.
pub fn value(fact: &Fact, seen: &Seen<'_>) -> Option<String> {
    Some(number(fact.of(seen)?.value, fact.digits))
}

fn read(of: Number, seen: &Seen<'_>) -> Option<String> {
    Some(number(of.read(seen)?.value, of.digits()))
}

fn by(decided: &Decided) -> Option<String> {
    let apart = (decided.left?.value - decided.right?.value).abs();
    Some(number(apart, decided.claim.left.digits()))
}

/// The standard error of the left number.
fn error(decided: &Decided) -> Option<String> {
    Some(number(decided.left?.error, decided.claim.left.digits()))
}

/// How far over a limit, in words that a number rounded to the limit does not belie.
fn over(decided: &Decided) -> Option<String> {
    let times = decided.left?.value / decided.right?.value;
    match times < JUST_OVER {
        true => Some("just over".into()),
        false => Some(format!("{} times", self::times(decided)?)),
    }
}

/// How many times the smaller the larger one is.
fn times(decided: &Decided) -> Option<String> {
    let (left, right) = (decided.left?.value, decided.right?.value);
    let (small, large) = (left.min(right), left.max(right));
    let times = large / small;
    let digits = usize::from(times < 9.95);
    (small > 0.0).then(|| number(times, digits))
}

/// The result at a step, and what the runs show.
///
/// # Errors
/// When the numbers support no sentence.
pub fn told(taught: &Taught<'_>, step: usize) -> Result<(String, Vec<String>), Unsupported> {
    let telling = Telling::of(taught, step);
    let headline = telling.claim(&taught.headline(step)?)?;
    let claims = taught.claims(step)?;
    let sentences = claims.iter().map(|claim| telling.claim(claim));
    let sentences: Vec<String> = sentences.collect::<Result<_, _>>()?;
    let capitals = sentences.iter().map(|sentence| capital(sentence));
    let mut all: Vec<String> = [capital(&headline)].into_iter().chain(capitals).collect();
    say_how_many(&mut all, taught.common.members);
    say_what_a_mean_is(&mut all, taught.steps[step].case.input.last_day);
    let headline = all.remove(0);
    Ok((headline, all))
}

/// What stands before the standard error of a mean of days.
const GIVE_OR_TAKE: &str = " ± ";

/// Behind the first mean of days: what its ± is, and what tanks that are not ready count as.
fn say_what_a_mean_is(all: &mut Vec<String>, last_day: u32) {
    let has_mean = |words: &String| words.contains(GIVE_OR_TAKE);
    if let Some(place) = all.iter().position(has_mean) {
        let words = format!(
            "In that mean, ± is how far chance would move it (standard error), and a tank that is not ready by day {last_day} counts as ready then."
        );
        all.insert(place + 1, words);
    }
}

/// What a count of 100 is made from.
const OF_100: &str = "of 100 plausible tanks";

/// Where the first count of 100 stands, it says how many tanks it is made from.
fn say_how_many(all: &mut [String], members: usize) {
    let has_count = |words: &&mut String| words.to_lowercase().contains(OF_100);
    if let Some(words) = all.iter_mut().find(has_count) {
        let told = format!("100 plausible tanks ({members} were run)");
        *words = words.replacen("100 plausible tanks", &told, 1);
    }
}
