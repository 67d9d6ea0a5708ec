//! `completions` and `manual`: for the shell and for `man`.

use clap::CommandFactory;

use super::args::Line;
use super::exit::Failure;
use super::say;

/// Prints a completion script.
pub fn completions(shell: clap_complete::Shell) -> Result<(), Failure> {
    let mut script = Vec::new();
    let mut line = Line::command();
    clap_complete::generate(shell, &mut line, "firstfill", &mut script);
    say::out(&String::from_utf8_lossy(&script))
}

/// Prints the manual page: the command itself, then each of its subcommands.
pub fn manual() -> Result<(), Failure> {
    let mut page = Vec::new();
    let mut line = Line::command();
    line.build();
    let failed = |why: std::io::Error| Failure::failed(format!("error: {why}"));
    clap_mangen::Man::new(line.clone())
        .render(&mut page)
        .map_err(failed)?;
    for command in line.get_subcommands() {
        let man = clap_mangen::Man::new(command.clone());
        man.render_name_section(&mut page).map_err(failed)?;
        man.render_synopsis_section(&mut page).map_err(failed)?;
        man.render_description_section(&mut page).map_err(failed)?;
        man.render_options_section(&mut page).map_err(failed)?;
        man.render_extra_section(&mut page).map_err(failed)?;
    }
    say::out(&String::from_utf8_lossy(&page))
}
