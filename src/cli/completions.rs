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

/// Prints the manual page: the command itself, then a section for each of its subcommands.
pub fn manual() -> Result<(), Failure> {
    let mut line = Line::command();
    line.build();
    let failed = |why: std::io::Error| Failure::failed(format!("error: {why}"));
    let mut page = Vec::new();
    clap_mangen::Man::new(line.clone())
        .render(&mut page)
        .map_err(failed)?;
    let mut text = String::from_utf8_lossy(&page).replace(".SH EXTRA", ".SH EXAMPLES");
    for command in line.get_subcommands() {
        text.push_str(&section(command).map_err(failed)?);
    }
    say::out(&text)
}

/// A subcommand as a section with parts, instead of a page of its own.
fn section(command: &clap::Command) -> std::io::Result<String> {
    let man = clap_mangen::Man::new(command.clone());
    let mut parts = Vec::new();
    man.render_synopsis_section(&mut parts)?;
    man.render_description_section(&mut parts)?;
    man.render_options_section(&mut parts)?;
    if command.get_after_help().is_some() {
        man.render_extra_section(&mut parts)?;
    }
    let parts = String::from_utf8_lossy(&parts)
        .replace(".SH EXTRA", ".SH EXAMPLES")
        .replace(".SH ", ".SS ");
    let name = command.get_display_name().unwrap_or(command.get_name());
    Ok(format!(
        ".SH \"{}\"\n{parts}",
        name.to_uppercase().replace('-', " ")
    ))
}
