//! What `lesson` is asked for: a lesson by its name, on its own scenarios or on those of a folder, or the manifest of an
//! earlier one, which repeats it.

use std::path::{Path, PathBuf};

use super::args::{Lesson as Options, WhichLesson, how_many};
use super::exit::Failure;
use super::{asked, load, say};
use crate::analysis::case::Case;
use crate::analysis::compare::Common;
use crate::analysis::forecast::USUAL_SEED;
use crate::analysis::lesson::taught::MEMBERS;
use crate::analysis::lesson::{Lesson, find};
use crate::output::lesson::Files;
use crate::scenario::{self, Loaded, Problems};

/// A lesson whose scenarios have been read.
pub struct Asked {
    /// The lesson.
    pub lesson: &'static Lesson,
    /// A case for each of its steps.
    pub cases: Vec<Case>,
    /// The plausible tanks.
    pub common: Common,
    /// The scenarios as they are run, each once.
    pub files: Files,
    /// Whether they are written too.
    pub with_scenarios: bool,
}

/// Reads what is asked for.
pub fn read(which: &WhichLesson, options: &Options) -> Result<Asked, Failure> {
    match which {
        WhichLesson::Named(lesson) => by_name(lesson, options),
        WhichLesson::Again(manifest) => again(manifest, options),
    }
}

fn by_name(lesson: &'static Lesson, options: &Options) -> Result<Asked, Failure> {
    let folder = options.from.as_deref();
    if let Some(missing) = folder.filter(|folder| !folder.is_dir()) {
        let (folder, key) = (missing.display(), lesson.key);
        return Err(Failure::bad_input(format!(
            "error: there is no folder {folder} with the scenarios of this lesson\n  \
             = help: `firstfill lesson {key} --scenarios --out {folder}` writes them there; change them, then use --from"
        )));
    }
    let loaded = scenario::lesson::read(lesson, folder).map_err(|problems| refused(&problems))?;
    Ok(Asked {
        lesson,
        files: files(lesson, folder, &loaded),
        cases: cases(loaded),
        common: Common {
            members: MEMBERS,
            seed: USUAL_SEED,
        },
        with_scenarios: options.scenarios,
    })
}

/// The scenarios, each once, in the order in which the program writes them; those of a folder by their names in it.
fn files(lesson: &Lesson, folder: Option<&Path>, loaded: &[Loaded]) -> Files {
    let mut files = scenario::lesson::files(lesson);
    let Some(folder) = folder else {
        return files;
    };
    for (path, text) in loaded.iter().flat_map(load::texts) {
        let name = Path::new(&path).strip_prefix(folder);
        let name = name.map_or(path.clone(), |name| name.display().to_string());
        match files.iter_mut().find(|(known, _)| *known == name) {
            Some((_, own)) => *own = text,
            None => files.push((name, text)),
        }
    }
    files
}

fn again(path: &Path, options: &Options) -> Result<Asked, Failure> {
    let name = path.display();
    if let Some(folder) = &options.from {
        return Err(Failure::bad_input(format!(
            "error: {name} brings its own scenarios, and --from {} names others\n  = help: leave one of the two out",
            folder.display()
        )));
    }
    let repeat = asked::manifest(path)?;
    let Some(lesson) = asked::then::<String>(path, &repeat, "lesson")?.and_then(|key| find(&key))
    else {
        return Err(Failure::bad_input(format!(
            "error: {name} is not of a lesson\n  = help: give the manifest.json of an earlier lesson, or the name of one; \
             `firstfill lesson` lists them"
        )));
    };
    asked::refuse_unknown(path, &repeat, &["lesson", "members", "seed", "scenarios"])?;
    let loaded = scenario::lesson::read_kept(lesson, &repeat.files);
    let members = asked::read_as(path, &repeat, "members", how_many)?;
    let seed = asked::then(path, &repeat, "seed")?;
    let with_scenarios = asked::then(path, &repeat, "scenarios")?;
    Ok(Asked {
        lesson,
        cases: cases(loaded.map_err(|problems| refused(&problems))?),
        common: Common {
            members: members.map_or(MEMBERS, |members| members as usize),
            seed: seed.unwrap_or(USUAL_SEED),
        },
        files: as_texts(&repeat.files),
        with_scenarios: options.scenarios || with_scenarios.unwrap_or(false),
    })
}

fn cases(loaded: Vec<Loaded>) -> Vec<Case> {
    loaded.into_iter().map(|one| one.case).collect()
}

fn as_texts(files: &[(PathBuf, String)]) -> Files {
    let text = |(path, text): &(PathBuf, String)| (path.display().to_string(), text.clone());
    files.iter().map(text).collect()
}

fn refused(problems: &Problems) -> Failure {
    Failure::bad_input(problems.render(say::err_has_colour()))
}
