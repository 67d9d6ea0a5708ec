//! What `compare` is asked for: scenarios, or the manifest of an earlier comparison, which repeats it.

use std::path::{Path, PathBuf};

use super::args::{Compare, how_many};
use super::exit::Failure;
use super::{asked, load_many, say};
use crate::scenario::{self, Loaded};

/// Scenarios that have been read, and the options to compare them with.
pub struct Asked {
    /// The scenarios.
    pub loaded: Vec<Loaded>,
    /// The options; `files` are the scenarios', also where a manifest was given.
    pub options: Compare,
}

/// Reads what is asked for. From a manifest come the texts of the scenarios and the options, unless others are
/// given beside it.
pub fn read(options: &Compare) -> Result<Asked, Failure> {
    match options.files.as_slice() {
        [only] if only.extension().is_some_and(|end| end == "json") => again(only, options),
        files => Ok(Asked {
            loaded: load_many::scenarios(files)?,
            options: options.clone(),
        }),
    }
}

fn again(path: &Path, now: &Compare) -> Result<Asked, Failure> {
    let repeat = asked::manifest(path)?;
    if repeat.plans.is_empty() {
        let name = path.display();
        return Err(Failure::bad_input(format!(
            "error: {name} is not of a comparison\n  = help: give the manifest.json of an earlier comparison, or two to eight scenarios, whose names end in .toml"
        )));
    }
    asked::refuse_unknown(path, &repeat, &["members", "seed", "no-charts", "page"])?;
    let mut options = now.clone();
    let first = |plan: &Vec<(PathBuf, String)>| plan[0].0.clone();
    options.files = repeat.plans.iter().map(first).collect();
    options.no_charts |= asked::was_on(path, &repeat, "no-charts")?;
    options.page |= asked::was_on(path, &repeat, "page")?;
    let members = asked::read_as(path, &repeat, "members", how_many)?;
    options.members = now.members.or(members);
    options.seed = now.seed.or(asked::then(path, &repeat, "seed")?);
    let plans = repeat.plans.into_iter().map(scenario::load_kept);
    let loaded: Result<Vec<Loaded>, _> = plans.collect();
    let refused = |problems: scenario::Problems| problems.render(say::err_has_colour());
    Ok(Asked {
        loaded: loaded.map_err(|problems| Failure::bad_input(refused(problems)))?,
        options,
    })
}
