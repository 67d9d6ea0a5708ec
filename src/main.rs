//! The command `firstfill`.

use std::process::ExitCode;

fn main() -> ExitCode {
    firstfill::cli::run().into()
}
