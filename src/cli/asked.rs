//! What `run` is asked for: a scenario, or the manifest of an earlier run, which repeats it.

use std::fs::File;
use std::io::{self, Read};
use std::num::ParseIntError;
use std::path::Path;
use std::str::FromStr;

use super::args::{Run, how_many, minutes_between_rows};
use super::exit::Failure;
use super::say;
use crate::output::repeat::{self, Repeat};
use crate::scenario::words::closest;
use crate::scenario::{self, Loaded};

/// Larger manifests are refused: they hold the texts of some scenarios and a few hundred values.
const LARGEST_BYTES: u64 = 20_000_000;

/// A scenario that has been read, and the options to run it with.
pub struct Asked {
    /// The scenario.
    pub loaded: Loaded,
    /// The options; `file` is the scenario's, also where a manifest was given.
    pub options: Run,
}

/// Reads what is asked for. From a manifest come the texts of the scenario, not from the files they
/// once stood in, and its options, unless others are given beside it.
pub fn read(options: &Run) -> Result<Asked, Failure> {
    let is_manifest = options.file.extension().is_some_and(|end| end == "json");
    let (loaded, options) = if is_manifest {
        let repeat = manifest(&options.file)?;
        refuse_other(&options.file, &repeat)?;
        refuse_unknown(&options.file, &repeat, &KEPT)?;
        let options = as_then(options, &repeat)?;
        (scenario::load_kept(repeat.files), options)
    } else {
        (scenario::load(&options.file), options.clone())
    };
    let refused = |problems: scenario::Problems| problems.render(say::err_has_colour());
    let loaded = loaded.map_err(|problems| Failure::bad_input(refused(problems)))?;
    Ok(Asked { loaded, options })
}

/// Reads the manifest of an earlier run or comparison.
pub(super) fn manifest(path: &Path) -> Result<Repeat, Failure> {
    let name = path.display();
    let mut text = String::new();
    // a pipe could keep us waiting for ever
    let is_file = path.metadata().map(|meta| meta.is_file());
    let opened = is_file.and_then(|is_file| match is_file {
        true => File::open(path),
        false => Err(io::Error::other("it is no file on a disk")),
    });
    opened
        .and_then(|file| file.take(LARGEST_BYTES).read_to_string(&mut text))
        .map_err(|why| {
            Failure::bad_input(format!(
                "error: {name} cannot be read: {why}\n  = help: check the spelling and the folder you are in; every run writes its manifest.json beside its tables"
            ))
        })?;
    let repeat = repeat::read(&text).map_err(|why| {
        Failure::bad_input(format!(
            "error: {name} cannot be repeated: {why}\n  = help: give the manifest.json of an earlier run, or a scenario, whose name ends in .toml"
        ))
    })?;
    let own = env!("CARGO_PKG_VERSION");
    if repeat.version != own {
        let then = &repeat.version;
        say::err(&format!(
            "note: {name} was written by version {then}, this is {own}: numbers may differ"
        ));
    }
    Ok(repeat)
}

/// An option of the earlier run, as it was typed; none where it was not.
pub(super) fn then<T: FromStr>(
    path: &Path,
    repeat: &Repeat,
    name: &str,
) -> Result<Option<T>, Failure> {
    let mut options = repeat.options.iter();
    let Some((_, value)) = options.find(|(known, _)| known == name) else {
        return Ok(None);
    };
    let broken = format!("error: {}: {name} is {value}", path.display());
    let value = value.parse();
    value.map(Some).map_err(|_| Failure::bad_input(broken))
}

/// An option of the earlier run, read as it is read where it is typed.
pub(super) fn read_as<T>(
    path: &Path,
    repeat: &Repeat,
    name: &str,
    typed: fn(&str) -> Result<T, String>,
) -> Result<Option<T>, Failure> {
    let Some(value) = then::<String>(path, repeat, name)? else {
        return Ok(None);
    };
    let broken = |why| {
        let path = path.display();
        Failure::bad_input(format!("error: {path}: {name} is {value}\n  = help: {why}"))
    };
    typed(&value).map(Some).map_err(broken)
}

/// Whether the earlier run had a switch on.
pub(super) fn was_on(path: &Path, repeat: &Repeat, name: &str) -> Result<bool, Failure> {
    Ok(then(path, repeat, name)?.unwrap_or(false))
}

/// Refuses a manifest with an option that its command does not write.
pub(super) fn refuse_unknown(path: &Path, repeat: &Repeat, known: &[&str]) -> Result<(), Failure> {
    let mut names = repeat.options.iter().map(|(name, _)| name.as_str());
    let Some(name) = names.find(|name| *name != "command" && !known.contains(name)) else {
        return Ok(());
    };
    let help = match closest(name, known.iter().copied()) {
        Some(like) => format!("did you mean {like}?"),
        None => format!("options are {}", known.join(", ")),
    };
    Err(Failure::bad_input(format!(
        "error: {}: there is no option {name}\n  = help: {help}",
        path.display()
    )))
}

fn refuse_other(path: &Path, repeat: &Repeat) -> Result<(), Failure> {
    let Some((_, command)) = repeat.options.iter().find(|(name, _)| name == "command") else {
        return Ok(());
    };
    let name = path.display();
    let help = match command.as_str() {
        "compare" | "sweep" | "lesson" => format!("`firstfill {command} {name}` repeats it"),
        _ => format!("type it again: {}", typed(command, repeat)),
    };
    Err(Failure::bad_input(format!(
        "error: {name} is of `firstfill {command}`, not of a run, and cannot be repeated by one\n  = help: {help}"
    )))
}

/// The command of a manifest as it could be typed again, from where it was typed.
fn typed(command: &str, repeat: &Repeat) -> String {
    let file = repeat
        .files
        .first()
        .map(|(path, _)| path.display().to_string());
    let mut words = format!("firstfill {command} {}", file.unwrap_or_default());
    let options = repeat.options.iter().filter(|(name, _)| name != "command");
    for (name, value) in options {
        words += &match value.as_str() {
            "true" => format!(" --{name}"),
            _ => format!(" --{name} {value}"),
        };
    }
    words
}

/// Options of a run that its manifest keeps.
const KEPT: [&str; 7] = [
    "every",
    "day",
    "no-charts",
    "page",
    "single",
    "members",
    "seed",
];

/// The options of the earlier run, under those given now.
fn as_then(now: &Run, repeat: &Repeat) -> Result<Run, Failure> {
    let path = &now.file;
    let broken = |why: String| Failure::bad_input(format!("error: {}: {why}", path.display()));
    let mut options = now.clone();
    options.file = repeat.files[0].0.clone();
    let every = read_as(path, repeat, "every", minutes_between_rows)?;
    options.every = now.every.or(every);
    if now.day.is_empty() {
        let days = repeat.options.iter().filter(|(name, _)| name == "day");
        let days: Result<Vec<u32>, _> = days.map(|(_, day)| day.parse()).collect();
        options.day = days.map_err(|why: ParseIntError| broken(why.to_string()))?;
    }
    options.no_charts |= was_on(path, repeat, "no-charts")?;
    options.page |= was_on(path, repeat, "page")?;
    if now.members.is_none() && !now.single && now.seed.is_none() {
        options.single = was_on(path, repeat, "single")?;
    }
    if !options.single {
        options.members = now.members.or(read_as(path, repeat, "members", how_many)?);
        options.seed = now.seed.or(then(path, repeat, "seed")?);
    }
    Ok(options)
}
