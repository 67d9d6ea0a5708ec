//! One lever: something a keeper can do otherwise, as a change of the input of a run.

use crate::engine::input::ModelInput;

type Pull = Box<dyn Fn(&mut ModelInput) + Send + Sync>;

/// Something a keeper can do otherwise.
///
/// It is pulled once all that is uncertain has been drawn, so that a member with it and the same member
/// without it differ in nothing else.
pub struct Lever {
    /// Its name in tables, which stays once published.
    pub key: &'static str,
    /// In words, for example `one change a week more`.
    pub words: String,
    pull: Pull,
}

impl Lever {
    /// A lever with its name, its words and what it changes.
    pub fn of(
        key: &'static str,
        words: impl Into<String>,
        pull: impl Fn(&mut ModelInput) + Send + Sync + 'static,
    ) -> Lever {
        Lever {
            key,
            words: words.into(),
            pull: Box::new(pull),
        }
    }
    /// The input with the lever pulled.
    #[must_use]
    pub fn pulled(&self, mut input: ModelInput) -> ModelInput {
        (self.pull)(&mut input);
        input
    }
}
