//! How far long work has come: a bar with the time left on a terminal; a log stays quiet.

use crate::base::shown::grouped;
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressState, ProgressStyle};

/// What the bar shows, behind its label.
const LINE: &str = "{msg} {bar:30} {pos} of {len}, {eta} left";
/// The same with how fast it goes.
const WITH_RATE: &str = "{msg} {bar:30} {pos} of {len}, {whole_per_sec}, {eta} left";
/// How fast it goes, in whole pieces.
const WHOLE_PER_SEC: &str = "whole_per_sec";
/// Set by services that build and test programs: nobody watches there.
const UNWATCHED: &str = "CI";

/// A bar on standard error, gone when the work is.
pub struct Progress {
    bar: ProgressBar,
    /// Whether it shows itself only once it is known how much there is to do, or how fast it goes.
    waits: bool,
}

/// A bar of so many pieces. It hides by itself where standard error is no terminal.
pub fn of(label: &'static str, pieces: usize) -> Progress {
    shown(LINE, label, pieces, pieces == 0)
}

/// The same, which tells how many pieces a second are done, and shows itself once some are.
pub fn with_rate(label: &'static str, pieces: usize) -> Progress {
    shown(WITH_RATE, label, pieces, true)
}

fn shown(line: &str, label: &'static str, pieces: usize, later: bool) -> Progress {
    let is_watched = std::env::var_os(UNWATCHED).is_none();
    let waits = is_watched && later;
    let bar = match is_watched && !waits {
        true => ProgressBar::new(pieces as u64),
        false => ProgressBar::with_draw_target(Some(pieces as u64), ProgressDrawTarget::hidden()),
    };
    let style = ProgressStyle::with_template(line);
    let style = style.unwrap_or_else(|_| ProgressStyle::default_bar());
    bar.set_style(style.with_key(WHOLE_PER_SEC, per_second));
    bar.set_message(label);
    Progress { bar, waits }
}

/// `2088 a second`
fn per_second(state: &ProgressState, line: &mut dyn std::fmt::Write) {
    let words = grouped(state.per_sec().round() as usize);
    let _ = write!(line, "{words} a second"); // a bar that cannot be written is none
}

impl Progress {
    /// So many pieces were done before.
    pub fn begin_at(&mut self, done: usize) {
        self.bar.set_position(done as u64);
        self.bar.reset_eta();
    }
    /// So many pieces are done.
    pub fn at(&mut self, done: usize) {
        if std::mem::take(&mut self.waits) {
            self.bar.set_draw_target(ProgressDrawTarget::stderr());
        }
        self.bar.set_position(done as u64);
    }
    /// So many pieces are done, of so many.
    pub fn at_of(&mut self, done: usize, pieces: usize) {
        self.bar.set_length(pieces as u64);
        self.at(done);
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}
