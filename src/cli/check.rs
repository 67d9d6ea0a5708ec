//! `check`: what a scenario means, without running it.

use super::args::Check;
use super::exit::Failure;
use super::{load, say};
use crate::analysis::uncertain::Uncertain;
use crate::output::text::{self, uncertain, understood};

/// Loads and prints; changes nothing.
pub fn check(options: &Check) -> Result<(), Failure> {
    let loaded = load::scenario(&options.file)?;
    let page = if options.uncertain {
        uncertain::page(&loaded.case, &Uncertain::of(&loaded.case))
    } else {
        understood::page(&loaded.case)
    };
    say::out(&page.render(say::width().unwrap_or(text::WIDEST)))
}
