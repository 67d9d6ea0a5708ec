//! `gather`: slices of one study joined, as if it had been run at once.

use super::args::Gather as Options;
use super::exit::Failure;
use super::study_asked::refused;
use super::study_told::{closing, finish};
use super::{stopping, study};
use crate::analysis::study::slice::Slice;
use crate::output::growing::Growing;
use crate::output::rows::manifest::{self, Kept};
use crate::output::rows::results::{FILE, Results};
use crate::output::rows::slices::{SlicesError, in_order, join};
use crate::scenario::study::{Asking, LoadedStudy, load_kept};

/// Checks the slices, joins them, works out what was found, writes and says.
pub fn run(options: &Options) -> Result<(), Failure> {
    let parts = in_order(&options.folders)?;
    let loaded = loaded(&parts[0].kept)?;
    let place = study::joined_place(options, &loaded);
    let text = manifest::text(&manifest::Story {
        study: &loaded.study,
        files: &loaded.files,
        slice: Slice::WHOLE,
    });
    let stop = stopping::listen();
    let first_choice = place.target().to_path_buf();
    let mut growing = Growing::open(place, &text, FILE, true)?;
    let results = Results::of(&loaded.study);
    join(&parts, results, loaded.study.rows(), &mut growing)?;
    let ended = finish(&loaded, Slice::WHOLE, growing, options.told, &stop)?;
    closing(ended, &first_choice)
}

/// The study that the slices are of, from the texts they carry.
fn loaded(kept: &Kept) -> Result<LoadedStudy, Failure> {
    let (then, now) = (&kept.repeat.version, env!("CARGO_PKG_VERSION"));
    if then != now {
        return Err(Failure::bad_input(format!(
            "error: the slices were run by version {then}, and this is {now}\n  = help: gather them with the version that ran them"
        )));
    }
    let asking = Asking {
        members: kept.option("members").parse().ok(),
        seed: kept.option("seed").parse().ok(),
    };
    load_kept(kept.repeat.files.clone(), asking).map_err(|problems| refused(&problems))
}

impl From<SlicesError> for Failure {
    fn from(error: SlicesError) -> Failure {
        let help = match &error {
            SlicesError::NotASlice { .. } => {
                "name the folders that `firstfill study FILE --shard K/N` wrote"
            }
            SlicesError::Apart { .. } => {
                "gather slices of one study, one number of members and one seed"
            }
            SlicesError::Missing { .. } => {
                "run them with `firstfill study FILE --shard K/N`, and name all folders"
            }
            SlicesError::Twice { .. } | SlicesError::Torn { .. } => "every row is needed once",
            SlicesError::Unreadable { .. } | SlicesError::Write(_) => {
                "check that the folder is there and yours"
            }
        };
        Failure::bad_input(format!("error: {error}\n  = help: {help}"))
    }
}
