//! What is said when the program itself is at fault.

use std::panic::{self, AssertUnwindSafe};

use super::exit::Exit;
use super::say;

/// Runs a command; a panic becomes a kind sentence and its own exit code. Drafts are cleared away
/// on the way out.
pub fn catch(command: impl FnOnce() -> Exit) -> Exit {
    panic::set_hook(Box::new(|panic| {
        let place = panic
            .location()
            .map_or(String::new(), |at| format!("{at}, "));
        let what = panic.payload_as_str().unwrap_or("no words were left");
        say::err(&format!(
            "This is a fault of firstfill, not of your file; no half-written folder is left.\n\
             Please report it with the scenario and this line: {what} ({place}version {})",
            env!("CARGO_PKG_VERSION")
        ));
    }));
    or_fault(command)
}

fn or_fault(command: impl FnOnce() -> Exit) -> Exit {
    panic::catch_unwind(AssertUnwindSafe(command)).unwrap_or(Exit::Fault)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_panic_ends_with_the_code_of_a_fault() {
        assert_eq!(
            or_fault(|| panic!("a test of the net below commands")),
            Exit::Fault
        );
    }
}
