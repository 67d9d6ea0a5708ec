//! The one place that prints. Colour goes only to terminals that want it; a reader that stops
//! reading (`firstfill ... | head`) is no error.

use std::io::{self, IsTerminal, Write};

use super::exit::Failure;

/// Says something on standard output.
///
/// # Errors
/// When it cannot be written, other than because nobody reads on.
pub fn out(text: &str) -> Result<(), Failure> {
    let mut stream = anstream::AutoStream::auto(io::stdout()).lock();
    forgive_closed(
        stream
            .write_all(text.as_bytes())
            .and_then(|()| stream.flush()),
    )
    .map_err(|why| Failure::bad_input(format!("error: cannot write to standard output: {why}")))
}

/// Says something on standard error; there is nobody left to tell if that fails.
pub fn err(text: &str) {
    let mut stream = anstream::AutoStream::auto(io::stderr()).lock();
    let _ = writeln!(stream, "{}", text.trim_end());
}

/// Whether standard error is a terminal that wants colour.
pub fn err_has_colour() -> bool {
    anstream::AutoStream::choice(&io::stderr()) != anstream::ColorChoice::Never
}

/// Columns of the terminal, where there is one.
pub fn width() -> Option<usize> {
    let of_terminal = io::stdout()
        .is_terminal()
        .then(terminal_size::terminal_size)
        .flatten();
    of_terminal.map(|(terminal_size::Width(columns), _)| columns.into())
}

fn forgive_closed(written: io::Result<()>) -> io::Result<()> {
    match written {
        Err(why) if why.kind() == io::ErrorKind::BrokenPipe => Ok(()),
        other => other,
    }
}
