//! `check`: what a scenario means, without running it.

use super::args::Check;
use super::exit::Failure;
use super::say;
use crate::analysis::uncertain::Uncertain;
use crate::output::text::{self, uncertain, understood};
use crate::scenario;

/// Loads and prints; changes nothing.
pub fn check(options: &Check) -> Result<(), Failure> {
    let loaded = scenario::load(&options.file)
        .map_err(|problems| Failure::bad_input(problems.render(say::err_has_colour())))?;
    let page = if options.uncertain {
        uncertain::page(&loaded.case, &Uncertain::of(&loaded.case))
    } else {
        understood::page(&loaded.case)
    };
    say::out(&page.render(say::width().unwrap_or(text::WIDEST)))
}
