//! Ctrl-C, and the signals by which a system ends a program.

use super::exit::Exit;
use super::say;
use crate::base::stop::Stop;

/// Listens for Ctrl-C, for a request to end (SIGTERM) and for a closed terminal (SIGHUP).
///
/// The first raises the flag that comes back; work that looks at it ends by itself and takes its
/// draft away. The second ends the program at once. Where one of these is ignored on purpose (by
/// `nohup`, say), none is listened for, and one that comes ends the program as it ends any.
pub fn listen() -> Stop {
    let stop = Stop::default();
    let asked = stop.clone();
    let listening = ctrlc::try_set_handler(move || {
        if asked.ask() {
            at_once();
        }
    });
    // without ears a draft may stay behind; the next run clears it away
    drop(listening);
    stop
}

#[expect(clippy::exit, reason = "the second time there is no more waiting")]
fn at_once() {
    say::err("stopped at once; the next run clears away what is left of this one");
    std::process::exit(Exit::Stopped as i32);
}
