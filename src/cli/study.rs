//! `study`: which unknowns matter, over many runs, in one sitting or many.

use std::path::PathBuf;

use super::args::Study as Options;
use super::exit::Failure;
use super::study_asked::{self, Start};
use super::study_told::{self, closing};
use super::{progress, say, stopping};
use crate::analysis::study::run::{Ended, Ran, run};
use crate::analysis::study::slice::Slice;
use crate::base::stop::Stop;
use crate::output::growing::Growing;
use crate::output::place::{Place, WriteError};
use crate::output::rows::manifest;
use crate::output::rows::results::{FILE, Results};
use crate::scenario::study::LoadedStudy;

/// Loads, runs what is not there yet, writes and says.
pub fn run_study(options: &Options) -> Result<(), Failure> {
    match options.threads {
        None => study(options),
        Some(threads) => {
            let pool = rayon::ThreadPoolBuilder::new()
                .num_threads(threads.get())
                .build();
            let refused = |why| Failure::bad_input(format!("error: no {threads} threads: {why}"));
            pool.map_err(refused)?.install(|| study(options))
        }
    }
}

fn study(options: &Options) -> Result<(), Failure> {
    let loaded = study_asked::load(options)?;
    let slice = options.shard.unwrap_or(Slice::WHOLE);
    let place = options.into.place(&usual(&loaded, slice));
    study_asked::refuse_large(options, &loaded, slice, place.target())?;
    let story = manifest::Story {
        study: &loaded.study,
        files: &loaded.files,
        slice,
    };
    let text = manifest::text(&story);
    let anew = match study_asked::start(options, &place, &text)? {
        Start::Done => return say::out(&study_asked::done_already(place.target())),
        Start::Anew => true,
        Start::GoOn => false,
    };
    let stop = stopping::listen();
    let first_choice = place.target().to_path_buf();
    let mut growing = Growing::open(place, &text, FILE, anew)?;
    grow(&loaded, slice, &mut growing, &stop)?;
    study_told::finish(&loaded, slice, growing, options.told, &stop)
        .and_then(|told| closing(told, &first_choice))
}

/// The folder when none is named: `output/study-<name>`, of a slice with its number.
pub fn usual(loaded: &LoadedStudy, slice: Slice) -> PathBuf {
    let name = manifest::name(&loaded.files);
    let of = match slice.is_whole() {
        true => String::new(),
        false => format!("-{}-of-{}", slice.number, slice.of),
    };
    PathBuf::from("output").join(format!("study-{name}{of}"))
}

/// Runs the rows that are not there yet.
fn grow(
    loaded: &LoadedStudy,
    slice: Slice,
    growing: &mut Growing,
    stop: &Stop,
) -> Result<(), Failure> {
    let (study, results) = (&loaded.study, Results::of(&loaded.study));
    let due = slice.rows(study.rows());
    let unreadable =
        |why| Failure::bad_input(format!("error: {}: {why}", growing.folder().display()));
    let (bytes, next) = results
        .read(growing.read()?, due.start, |_, _| Ok(()))
        .map_err(unreadable)?;
    growing.cut(bytes)?;
    if bytes == 0 {
        growing.add(&results.header())?;
    }
    let mut bar = progress::with_rate("runs", (due.end - due.start) as usize);
    bar.begin_at((next - due.start) as usize);
    let mut done = next;
    let ended = run(
        study,
        &loaded.family,
        next..due.end,
        stop,
        |batch: &[Ran]| {
            growing.add(&results.lines(batch))?;
            done += batch.len() as u64;
            bar.at((done - due.start) as usize);
            Ok::<(), WriteError>(())
        },
    );
    drop(bar);
    let kept = || study_asked::kept(done - due.start, due.end - due.start, growing.folder());
    ended.map_err(|ended| match ended {
        Ended::Stopped(stopped) => Failure {
            words: format!("stopped; {}", kept()),
            ..stopped.into()
        },
        Ended::Refused(why) => Failure::from(why).but(&kept()),
    })
}

/// Where the folder of a study goes that is joined from slices.
pub fn joined_place(options: &super::args::Gather, loaded: &LoadedStudy) -> Place {
    options.into.place(&usual(loaded, Slice::WHOLE))
}
