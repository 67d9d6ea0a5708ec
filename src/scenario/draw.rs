//! A problem as text: the line, a caret under the spot, and advice below.

use annotate_snippets::{AnnotationKind, Group, Level, Origin, Renderer, Snippet};

use super::files::Files;
use super::problem::{Place, Problem};

/// Most other places of one problem that are pointed at.
const MOST_OTHER_PLACES: usize = 10;

/// One problem, without a line break at its end.
pub fn problem(problem: &Problem, files: &Files, styled: bool) -> String {
    let title = Level::ERROR.primary_title(problem.title.as_str());
    let mut group = match &problem.place {
        Some(place) => title.elements(snippets(problem, place, files)),
        None => {
            let name = problem.file_name.as_deref().unwrap_or("");
            title.element(Origin::path(name))
        }
    };
    for line in &problem.help {
        group = group.element(Level::HELP.message(line.as_str()));
    }
    let renderer = if styled {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    let groups: [Group<'_>; 1] = [group];
    tidy(&renderer.render(&groups))
}

/// The snippet of the place itself, and one per other file it touches.
fn snippets<'a>(
    problem: &'a Problem,
    place: &Place,
    files: &'a Files,
) -> Vec<Snippet<'a, annotate_snippets::Annotation<'a>>> {
    let mut main = snippet(files, place.file).annotation(
        AnnotationKind::Primary
            .span(visible(files.text(place.file), place))
            .label(problem.label.as_str()),
    );
    let mut others = Vec::new();
    for (also, words) in problem.also.iter().take(MOST_OTHER_PLACES) {
        let mark = AnnotationKind::Context
            .span(visible(files.text(also.file), also))
            .label(words.as_str());
        if also.file == place.file {
            main = main.annotation(mark);
        } else {
            others.push(snippet(files, also.file).annotation(mark));
        }
    }
    others.insert(0, main);
    others
}

fn snippet<'a>(files: &'a Files, file: usize) -> Snippet<'a, annotate_snippets::Annotation<'a>> {
    Snippet::source(files.text(file)).path(files.name(file))
}

/// The stretch to underline: at least one sign, and the first line only of a long one.
fn visible(text: &str, place: &Place) -> std::ops::Range<usize> {
    let start = place.start.min(text.len());
    let end = place.end.min(text.len()).max(start);
    let line = text[start..end]
        .find(['\n', '\r'])
        .map_or(end, |at| start + at);
    start..line.max(start)
}

/// Without spaces at line ends, and without the control signs that the renderer lets through.
fn tidy(text: &str) -> String {
    let text = text.replace(
        |sign: char| ('\u{80}'..='\u{9f}').contains(&sign),
        "\u{fffd}",
    );
    let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
    lines.join("\n").trim_end().to_string()
}
