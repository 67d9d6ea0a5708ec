//! Claims: sentences about an effect, each in as many variants as its two numbers can have outcomes.

use thiserror::Error;

use super::fact::{Fact, Read, Seen};

/// Standard errors of a mean within which two numbers are not told apart.
const CLEAR_ERRORS: f64 = 2.0;

/// Where a template has its cause.
const CAUSE: &str = "{cause}";

/// One side of a claim.
#[derive(Debug, Clone, Copy)]
pub enum Number {
    /// A fact of the step that is told.
    Here(Fact),
    /// The same of the step it is held against.
    Base(Fact),
    /// A number that stands for itself, with the digits it is told with.
    Fixed(f64, usize),
}

impl Number {
    /// Its value at a step; none where there is none.
    pub fn read(&self, seen: &Seen<'_>) -> Option<Read> {
        match self {
            Number::Here(fact) => fact.of(seen),
            Number::Base(fact) => fact.of(&seen.at_base()),
            Number::Fixed(value, _) => Some(Read::exact(*value)),
        }
    }
    /// Digits after the point.
    pub fn digits(&self) -> usize {
        match self {
            Number::Here(fact) | Number::Base(fact) => fact.digits,
            Number::Fixed(_, digits) => *digits,
        }
    }
}

/// How the left number of a claim stands to its right one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stands {
    /// Clearly higher.
    Higher,
    /// Clearly lower.
    Lower,
    /// Not told apart.
    Alike,
    /// There is no right number.
    OnlyLeft,
    /// There is no left number.
    OnlyRight,
    /// There is neither.
    Neither,
    /// The step is the one that others are held against.
    AtBase,
}

/// A sentence about an effect. Its words are templates: `{left}`, `{right}`, `{by}` (how far apart), `{times}` (how
/// many times the smaller), `{step}` and `{base}` in words, `{cause}` (see [`Claim::because`]), and any fact by its key,
/// `{tan_peak}` of this step and `{base.tan_peak}` of the other.
#[derive(Debug, Clone, Copy)]
pub struct Claim {
    /// Its name in messages.
    pub key: &'static str,
    /// What is told.
    pub left: Number,
    /// What it is held against.
    pub right: Number,
    /// Differences up to this are none, in the unit of both.
    pub clear: f64,
    /// What its words put at `{cause}`.
    pub cause: Option<&'static Claim>,
    variants: [Option<&'static str>; 7],
}

impl Claim {
    /// A claim that has no words yet.
    pub const fn of(key: &'static str, left: Number, right: Number, clear: f64) -> Claim {
        Claim {
            key,
            left,
            right,
            clear,
            cause: None,
            variants: [None; 7],
        }
    }
    /// The words for an outcome.
    pub const fn when(mut self, stands: Stands, words: &'static str) -> Claim {
        self.variants[stands as usize] = Some(words);
        self
    }
    /// The words where the left number is clearly higher.
    pub const fn higher(self, words: &'static str) -> Claim {
        self.when(Stands::Higher, words)
    }
    /// The words where the left number is clearly lower.
    pub const fn lower(self, words: &'static str) -> Claim {
        self.when(Stands::Lower, words)
    }
    /// The words where both are not told apart.
    pub const fn alike(self, words: &'static str) -> Claim {
        self.when(Stands::Alike, words)
    }
    /// The words at the step that others are held against.
    pub const fn at_base(self, words: &'static str) -> Claim {
        self.when(Stands::AtBase, words)
    }
    /// What its words put at `{cause}`: a claim about what lies between the input and the effect. Where that stands
    /// otherwise its words are empty, or name another cause.
    pub const fn because(mut self, cause: &'static Claim) -> Claim {
        self.cause = Some(cause);
        self
    }
    /// All its words.
    pub fn all_words(&self) -> impl Iterator<Item = &'static str> {
        self.variants.into_iter().flatten()
    }
    /// The variant that the numbers of a step support.
    ///
    /// # Errors
    /// When the claim has no words for what the numbers show.
    pub fn decide(&self, seen: &Seen<'_>) -> Result<Decided, Unsupported> {
        let (left, right) = (self.left.read(seen), self.right.read(seen));
        let unsupported = || Unsupported {
            claim: self.key,
            step: seen.step.key.clone(),
            left: shown(left),
            right: shown(right),
        };
        let at_base = seen.is_base() && self.variants[Stands::AtBase as usize].is_some();
        let stands = stands(left, right, self.clear).ok_or_else(unsupported)?;
        let stands = if at_base { Stands::AtBase } else { stands };
        let words = self.variants[stands as usize].ok_or_else(unsupported)?;
        if let Some(cause) = self.cause.filter(|_| words.contains(CAUSE)) {
            cause.decide(seen)?;
        }
        Ok(Decided {
            claim: *self,
            stands,
            left,
            right,
            words,
        })
    }
}

/// Numbers that differ by no more than `clear`, or by no more than two standard errors, are alike. None where one is
/// no number at all.
fn stands(left: Option<Read>, right: Option<Read>, clear: f64) -> Option<Stands> {
    let mut both = left.iter().chain(&right);
    if !both.all(|read| read.value.is_finite() && read.error.is_finite()) {
        return None;
    }
    Some(match (left, right) {
        (None, None) => Stands::Neither,
        (Some(_), None) => Stands::OnlyLeft,
        (None, Some(_)) => Stands::OnlyRight,
        (Some(left), Some(right)) => {
            let apart = left.value - right.value;
            let least = clear.max(CLEAR_ERRORS * left.error.max(right.error));
            match apart {
                apart if apart > least => Stands::Higher,
                apart if apart < -least => Stands::Lower,
                _ => Stands::Alike,
            }
        }
    })
}

fn shown(read: Option<Read>) -> String {
    read.map_or_else(|| "none".into(), |read| read.value.to_string())
}

/// A claim with the variant that the numbers support.
#[derive(Debug, Clone, Copy)]
pub struct Decided {
    /// The claim.
    pub claim: Claim,
    /// What the numbers show.
    pub stands: Stands,
    /// The left number.
    pub left: Option<Read>,
    /// The right number.
    pub right: Option<Read>,
    /// The words, a template.
    pub words: &'static str,
}

/// Numbers that no sentence of a claim fits.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("no sentence of \"{claim}\" fits its numbers at \"{step}\": {left} against {right}")]
pub struct Unsupported {
    /// The claim.
    pub claim: &'static str,
    /// The step.
    pub step: String,
    /// The left number.
    pub left: String,
    /// The right number.
    pub right: String,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(value: f64, error: f64) -> Option<Read> {
        Some(Read { value, error })
    }

    #[test]
    fn numbers_are_told_apart_beyond_what_is_clear_and_beyond_two_errors() {
        let of = |left, right| stands(left, right, 0.5).unwrap();
        assert_eq!(of(read(2.0, 0.0), read(1.0, 0.0)), Stands::Higher);
        assert_eq!(of(read(1.0, 0.0), read(2.0, 0.0)), Stands::Lower);
        assert_eq!(of(read(1.5, 0.0), read(1.0, 0.0)), Stands::Alike);
        assert_eq!(of(read(2.0, 0.6), read(1.0, 0.0)), Stands::Alike);
        assert_eq!(of(None, read(1.0, 0.0)), Stands::OnlyRight);
        assert_eq!(of(read(1.0, 0.0), None), Stands::OnlyLeft);
        assert_eq!(of(None, None), Stands::Neither);
    }

    #[test]
    fn what_is_no_number_supports_nothing() {
        assert_eq!(stands(read(f64::NAN, 0.0), read(1.0, 0.0), 0.5), None);
        assert_eq!(stands(None, read(f64::INFINITY, 0.0), 0.5), None);
    }
}
