//! What `sweep` is asked for: a scenario and what is varied, or the manifest of an earlier sweep, which repeats it.

use std::path::Path;

use super::args::{Sweep, how_many};
use super::exit::Failure;
use super::{asked, load, say};
use crate::analysis::sweep::axis::Axis;
use crate::analysis::sweep::size::Size;
use crate::output::repeat::Repeat;
use crate::output::text::sweep_size;
use crate::scenario::problem::Problems;
use crate::scenario::{self, Loaded, varied};

/// A scenario that has been read, and the options to vary it with.
pub struct Asked {
    /// The scenario.
    pub loaded: Loaded,
    /// The options; `file` is the scenario's, also where a manifest was given.
    pub options: Sweep,
}

/// Reads what is asked for. From a manifest come the texts of the scenario and the options, unless others are given
/// beside it.
pub fn read(options: &Sweep) -> Result<Asked, Failure> {
    let file = &options.file;
    if file.extension().is_some_and(|end| end == "json") {
        return again(file, options);
    }
    Ok(Asked {
        loaded: load::scenario(file)?,
        options: options.clone(),
    })
}

/// Options of a sweep that its manifest keeps.
const KEPT: [&str; 7] = ["vary", "of", "members", "seed", "no-charts", "page", "yes"];

fn again(path: &Path, now: &Sweep) -> Result<Asked, Failure> {
    let repeat = asked::manifest(path)?;
    if then(&repeat, "command").next() != Some("sweep") {
        let name = path.display();
        return Err(Failure::bad_input(format!(
            "error: {name} is not of a sweep\n  = help: give the manifest.json of an earlier sweep, or a scenario, whose name ends in .toml"
        )));
    }
    asked::refuse_unknown(path, &repeat, &KEPT)?;
    let mut options = now.clone();
    options.file = repeat.files[0].0.clone();
    for (list, name) in [(&mut options.vary, "vary"), (&mut options.of, "of")] {
        if list.is_empty() {
            list.extend(then(&repeat, name).map(String::from));
        }
    }
    options.no_charts |= asked::was_on(path, &repeat, "no-charts")?;
    options.page |= asked::was_on(path, &repeat, "page")?;
    options.yes |= asked::was_on(path, &repeat, "yes")?;
    let members = asked::read_as(path, &repeat, "members", how_many)?;
    options.members = now.members.or(members);
    options.seed = now.seed.or(asked::then(path, &repeat, "seed")?);
    let kept = scenario::load_kept(repeat.files);
    Ok(Asked {
        loaded: kept.map_err(|problems| refused(&problems))?,
        options,
    })
}

/// The values of an option of the earlier sweep.
fn then<'a>(repeat: &'a Repeat, name: &'static str) -> impl Iterator<Item = &'a str> {
    let options = repeat.options.iter();
    let of_name = options.filter(move |(known, _)| known == name);
    of_name.map(|(_, value)| value.as_str())
}

/// What is varied; a grid so large that it takes long is refused once.
pub fn axes(loaded: &Loaded, options: &Sweep) -> Result<Vec<Axis>, Failure> {
    let axes = varied::axes(loaded, &options.vary).map_err(|problems| refused(&problems))?;
    let points = axes.iter().map(|axis| axis.settings.len()).product();
    let threads = rayon::current_num_threads();
    let members = options.common().members;
    let size = Size::of(points, members, &loaded.case.input, threads);
    if size.is_large() && !options.yes {
        return Err(Failure::bad_input(sweep_size::refusal(&size, members)));
    }
    Ok(axes)
}

/// Problems of a scenario or of what is varied, said.
pub fn refused(problems: &Problems) -> Failure {
    Failure::bad_input(problems.render(say::err_has_colour()))
}

/// The options that shape the files, as they could be typed again.
pub fn repeatable(options: &Sweep) -> Vec<(String, String)> {
    let common = options.common();
    let one = |name: &str, value: String| (name.to_string(), value);
    let mut list = vec![one("command", "sweep".into())];
    list.extend(options.vary.iter().map(|vary| one("vary", vary.clone())));
    list.extend(options.of.iter().map(|figure| one("of", figure.clone())));
    list.push(one("members", common.members.to_string()));
    list.push(one("seed", common.seed.to_string()));
    let flags = [
        ("no-charts", options.no_charts),
        ("page", options.page),
        ("yes", options.yes),
    ];
    let given = flags.into_iter().filter(|(_, given)| *given);
    list.extend(given.map(|(name, _)| one(name, "true".into())));
    list
}
