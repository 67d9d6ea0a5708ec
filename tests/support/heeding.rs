//! A program that heeds signals, wherever the tests are run from.

use std::process::Command;

/// The same command with no signal ignored, where the system knows how to say that: tests that are
/// themselves run under `nohup` or in the background pass on what they ignore.
pub fn heeding(command: &Command) -> Command {
    let knows = Command::new("env")
        .args(["--default-signal", "true"])
        .status();
    let mut heeding = if knows.is_ok_and(|status| status.success()) {
        let mut heeding = Command::new("env");
        heeding.arg("--default-signal").arg(command.get_program());
        heeding
    } else {
        Command::new(command.get_program())
    };
    heeding.args(command.get_args());
    let set = command.get_envs();
    heeding.envs(set.filter_map(|(name, value)| Some((name, value?))));
    heeding.current_dir(command.get_current_dir().expect("a room"));
    heeding
}
