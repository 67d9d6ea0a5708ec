//! A word out of a few: a wrong one is refused with all that are allowed and what to try.

use std::ffi::OsStr;
use std::marker::PhantomData;

use clap::builder::{PossibleValue, TypedValueParser};
use clap::error::ErrorKind;
use clap::{Arg, Command, Error, ValueEnum};

use crate::scenario::words::closest;

/// Reads a word of a list; help and completions know the list as they do of any.
#[derive(Debug, Clone, Copy)]
pub struct OneOf<T>(PhantomData<T>);

impl<T> OneOf<T> {
    /// For the words of a type.
    pub const fn new() -> Self {
        OneOf(PhantomData)
    }
}

impl<T: ValueEnum + Clone + Send + Sync + 'static> TypedValueParser for OneOf<T> {
    type Value = T;

    fn parse_ref(&self, command: &Command, arg: Option<&Arg>, typed: &OsStr) -> Result<T, Error> {
        let typed = typed.to_string_lossy();
        T::from_str(&typed, false).map_err(|_| {
            let option = arg.and_then(Arg::get_long).unwrap_or_default();
            Error::raw(ErrorKind::ValueValidation, refusal::<T>(option, &typed)).with_cmd(command)
        })
    }

    fn possible_values(&self) -> Option<Box<dyn Iterator<Item = PossibleValue> + '_>> {
        let all = T::value_variants().iter();
        Some(Box::new(all.filter_map(ValueEnum::to_possible_value)))
    }
}

/// What is wrong, what is allowed, what to try.
fn refusal<T: ValueEnum>(option: &str, typed: &str) -> String {
    let all = T::value_variants().iter();
    let words: Vec<PossibleValue> = all.filter_map(ValueEnum::to_possible_value).collect();
    let names: Vec<&str> = words.iter().map(PossibleValue::get_name).collect();
    let near = closest(typed, names.iter().copied()).unwrap_or(names[0]);
    let listed = words.iter().map(|word| {
        let help = word.get_help().map_or(String::new(), ToString::to_string);
        format!("\n          {:<10} {help}", word.get_name())
    });
    let listed: String = listed.collect();
    format!(
        "--{option} {typed} is not known\n  = help: try --{option} {near}; allowed are{listed}\n"
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cli::args::find_calendar::LeastOf;

    #[test]
    fn a_wrong_word_is_answered_with_the_nearest_and_with_all() {
        insta::assert_snapshot!(refusal::<LeastOf>("least", "water"), @r"
        --least water is not known
          = help: try --least litres; allowed are
                  litres     Litres changed in all
                  visits     Changes of water
                  ready-day  Days until ready, on the mean
        ");
        assert!(refusal::<LeastOf>("least", "visit").contains("try --least visits;"));
    }
}
