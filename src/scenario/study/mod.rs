//! A study file becomes a checked study and the tanks it is about, or a list of all its problems.
//!
//! ```text
//! study file --head, wishes--> what is asked for ──┐
//! scenario(s) --files, based_on--> trees ──────────┴─laid─> one tree per combination of settings ─build─> cases
//! cases --chosen, spreads--> inputs with their spreads --> Study, Family
//! ```
//!
//! What varies is laid over the scenario with its place in the study file, so that the reader of scenarios points at
//! the line of the study.

mod advice;
mod chosen;
mod head;
mod known;
mod laid;
mod near;
mod refuse;
mod spreads;
mod values;
mod wishes;

use std::path::{Path, PathBuf};

use crate::analysis::case::Case;
use crate::analysis::study::Study;
use crate::analysis::study::family::Family;
use crate::analysis::study::input::Input;

use super::based_on;
use super::desk::Desk;
use super::files::{self, Files};
use super::problem::{Problem, Problems};
use super::reader::{Read, Reader};
use super::tree;
use head::Head;
pub use head::MOST_MEMBERS;
use laid::Ground;
use wishes::Wish;

/// Most combinations of settings: the scenario of each is kept.
const MOST_COMBINATIONS: usize = 256;

/// What is asked for beside the file; it goes before what the file says.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Asking {
    /// How many members.
    pub members: Option<usize>,
    /// Where chance begins.
    pub seed: Option<u64>,
}

/// A study that was read without a problem.
#[derive(Debug, Clone)]
pub struct LoadedStudy {
    /// What it asks.
    pub study: Study,
    /// The tanks it is about.
    pub family: Family,
    /// The study file, the scenarios and what they are based on, by their names as seen from the folder of the study.
    pub files: Vec<(PathBuf, String)>,
}

/// Reads and checks a study file with its scenarios.
///
/// # Errors
/// With all problems of the file, and of the scenarios with what varies in them.
pub fn load(path: &Path, asking: Asking) -> Result<LoadedStudy, Problems> {
    match files::read(path) {
        Ok(text) => read(path, text, Files::default(), asking),
        Err(problem) => Err(super::alone(path, *problem)),
    }
}

/// Reads and checks a study from texts that were kept with their names, the study file first.
///
/// # Errors
/// With all problems of the texts, or when one that is needed was not kept.
pub fn load_kept(kept: Vec<(PathBuf, String)>, asking: Asking) -> Result<LoadedStudy, Problems> {
    let Some((path, text)) = kept.first().cloned() else {
        return Err(super::alone(Path::new(""), super::build::empty("")));
    };
    read(&path, text, Files::of_kept(kept), asking)
}

/// Reads and checks a study from a text; `path` is where the file would stand, for the names of its scenarios.
///
/// # Errors
/// With all problems of the text and of the scenarios.
pub fn read_text(path: &Path, text: &str, asking: Asking) -> Result<LoadedStudy, Problems> {
    read(path, text.to_string(), Files::default(), asking)
}

fn read(
    path: &Path,
    text: String,
    mut files: Files,
    asking: Asking,
) -> Result<LoadedStudy, Problems> {
    match understood(path, text, &mut files, asking) {
        Ok((study, family)) => Ok(LoadedStudy {
            study,
            family,
            files: seen_from(path, files.into_list()),
        }),
        Err(problems) => Err(Problems::new(&path.display().to_string(), files, problems)),
    }
}

/// Names as seen from the folder of the study, so that they are the same from wherever it is run.
fn seen_from(path: &Path, files: Vec<(PathBuf, String)>) -> Vec<(PathBuf, String)> {
    let folder = path.parent().unwrap_or(Path::new(""));
    let seen = |name: PathBuf| {
        name.strip_prefix(folder)
            .map(Path::to_path_buf)
            .unwrap_or(name)
    };
    let files = files.into_iter();
    files.map(|(name, text)| (seen(name), text)).collect()
}

type Refused = Vec<Problem>;

fn understood(
    path: &Path,
    text: String,
    files: &mut Files,
    asking: Asking,
) -> Result<(Study, Family), Refused> {
    let file = files.add(path, text);
    let (table, syntax) = tree::parse(file, files.text(file));
    if !syntax.is_empty() {
        return Err(syntax);
    }
    refuse::scenario(&table)?;
    let desk = Desk::default();
    let reader = Reader::of_file(&desk, &table);
    let head = head::read(&reader, asking);
    let wishes = wishes::read(&reader);
    reader.close();
    let mut problems = desk.take_problems();
    let grounds = grounds(path, files, &head, &mut problems);
    let plain = plain(&grounds, &mut problems)?;
    let list = chosen::wanted(&wishes, &grounds, &plain, &mut problems);
    if grounds.len() < head.scenarios.len() {
        return Err(problems);
    }
    let counts = counts(&head, &list);
    let too_many = refuse::too_many(&head, &counts, MOST_COMBINATIONS);
    // what is wrong with a value shows in a scenario only: it is told beside what is wrong so far
    let cases = too_many.and_then(|()| cases(&grounds, &list, &counts));
    let cases = match (cases, problems.is_empty()) {
        (Ok(cases), true) => cases,
        (Ok(_), false) => return Err(problems),
        (Err(more), _) => {
            problems.extend(more);
            return Err(problems);
        }
    };
    refuse::lengths(&head, &cases)?;
    let inputs = spreads::inputs(&head, &wishes, &list, &cases)?;
    let family = Family::of(cases, &inputs);
    let study = study(head, inputs, &family, &list)?;
    Ok((study, family))
}

/// The scenarios with what they are based on.
fn grounds(path: &Path, files: &mut Files, head: &Head, problems: &mut Refused) -> Vec<Ground> {
    let folder = path.parent().unwrap_or(Path::new(""));
    let mut grounds = Vec::new();
    for (name, place) in &head.scenarios {
        let scenario = folder.join(name);
        match files.fetch(&scenario) {
            Ok(text) => {
                let stem = scenario.file_stem().unwrap_or_default();
                let stem = stem.to_string_lossy().into_owned();
                let mut merged = based_on::load(files, &scenario, text);
                problems.append(&mut merged.problems);
                grounds.push(Ground { stem, merged });
            }
            Err(problem) => problems.push(
                Problem::at(place, problem.title)
                    .help("the name is relative to the study file it stands in"),
            ),
        }
    }
    grounds
}

/// The scenarios as they are, before anything varies.
fn plain(grounds: &[Ground], problems: &mut Refused) -> Result<Vec<Case>, Refused> {
    let mut cases = Vec::new();
    for ground in grounds {
        match ground.with(tree::Table::default()) {
            Ok(case) => cases.push(case),
            Err(more) => problems.extend(more),
        }
    }
    match cases.len() == grounds.len() && !grounds.is_empty() {
        true => Ok(cases),
        false => Err(std::mem::take(problems)),
    }
}

/// How many settings there are of the scenario and of each wish, in the order of the inputs.
fn counts(head: &Head, list: &[Wish]) -> Vec<usize> {
    let of_wish = |wish: &Wish| match &wish.values {
        values::Values::Settings(settings) => settings.len(),
        _ => 1,
    };
    let scenarios = std::iter::once(head.scenarios.len());
    scenarios.chain(list.iter().map(of_wish)).collect()
}

/// The case of every combination of settings, the last running fastest.
fn cases(grounds: &[Ground], list: &[Wish], counts: &[usize]) -> Result<Vec<Case>, Refused> {
    let combinations: usize = counts.iter().product();
    let ranges = laid::ranges(list);
    let (mut cases, mut problems) = (Vec::new(), Vec::new());
    for combination in 0..combinations {
        let mut rest = combination;
        let mut numbers = vec![0; counts.len()];
        for (number, count) in numbers.iter_mut().zip(counts).rev() {
            (*number, rest) = (rest % count, rest / count);
        }
        let settings = list.iter().zip(&numbers[1..]);
        let settings = settings.map(|(wish, &number)| laid::setting(wish, number));
        let entries = settings.fold(ranges.clone(), based_on::over);
        match grounds[numbers[0]].with(entries) {
            Ok(case) => cases.push(case),
            Err(more) => of_scenario(&grounds[numbers[0]], grounds.len(), more, &mut problems),
        }
    }
    match problems.is_empty() {
        true => Ok(cases),
        false => Err(problems),
    }
}

/// Problems of a scenario with what varies in it, each once; of several scenarios with the name of the one it is about.
fn of_scenario(ground: &Ground, scenarios: usize, more: Refused, problems: &mut Refused) {
    let named = |problem: Problem| match scenarios {
        1 => problem,
        _ => problem.help(format!("it is so in the scenario {}", ground.stem)),
    };
    for problem in more.into_iter().map(named) {
        if !problems.contains(&problem) {
            problems.push(problem);
        }
    }
}

fn study(head: Head, inputs: Vec<Input>, family: &Family, list: &[Wish]) -> Result<Study, Refused> {
    let last_day = family.variants()[0].case().input.last_day;
    let answers = [
        refuse::few_members(&head, inputs.len()),
        refuse::tied(&head, family, &inputs, list),
        refuse::late(&head, last_day),
    ];
    let problems: Refused = answers
        .into_iter()
        .filter_map(Result::err)
        .flatten()
        .collect();
    if !problems.is_empty() {
        return Err(problems);
    }
    let ready_by = match head.ready_by {
        Read::Given(day, _) => day,
        _ => head::USUAL_READY_BY.min(last_day),
    };
    Ok(Study {
        inputs,
        milestones: head.milestones,
        method: head.method,
        members: head.members,
        seed: head.seed,
        last_day,
        ready_by,
    })
}
