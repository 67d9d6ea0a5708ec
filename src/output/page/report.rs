//! The page of a run, a comparison or a sweep: charts, tables and words, fit to be sent to somebody.

use maud::{Markup, PreEscaped, html};

use crate::output::chart::Figure;
use crate::output::text::{Page, Tone};

use super::table::Words;
use super::{drawing, frame};

/// What a page is made of.
#[derive(Debug, Clone)]
pub struct Report<'a> {
    /// What kind of work it was, over the title.
    pub over: &'a str,
    /// The title.
    pub title: &'a str,
    /// What came of it, in words and tables.
    pub result: Markup,
    /// The charts.
    pub figures: &'a [Figure],
    /// The tables, each with what heads its part.
    pub tables: &'a [(String, Words)],
    /// How it was computed.
    pub how: &'a [String],
    /// Names and texts of the scenarios.
    pub files: &'a [(String, String)],
}

/// The whole page.
pub fn page(report: &Report<'_>) -> String {
    let main = html! {
        header { p class="over" { (report.over) } h1 { (report.title) } }
        section class="words" aria-labelledby="result" { h2 id="result" { "The result" } (report.result) }
        @if !report.figures.is_empty() {
            section aria-labelledby="charts" {
                h2 id="charts" { "Charts" }
                @for figure in report.figures { (chart(figure)) }
            }
        }
        @for (place, (heading, table)) in report.tables.iter().enumerate() {
            section class="words" aria-labelledby=(format!("table-{place}")) {
                h2 id=(format!("table-{place}")) { (heading) }
                (table.markup(None))
            }
        }
        (frame::computed(report.how, report.files))
        (frame::cautions())
    };
    frame::page(report.title, &main, &drawing::rules(), "")
}

/// What only somebody at a terminal can do stands between these signs.
const TYPED: char = '`';

/// The blocks of a terminal page, but for what only somebody at a terminal can do.
pub fn words(page: &Page) -> Markup {
    let blocks = page.blocks().into_iter().map(|(label, mut lines)| {
        lines.retain(|(_, line)| !line.contains(TYPED));
        (label, lines)
    });
    html! {
        @for (label, lines) in blocks.filter(|(_, lines)| !lines.is_empty()) {
            div class="block" {
                h3 { (label) }
                div { @for (tone, line) in lines { p class=(class(tone)) { (line.trim()) } } }
            }
        }
    }
}

fn class(tone: Tone) -> &'static str {
    match tone {
        Tone::Plain => "plain",
        Tone::Strong => "strong",
        Tone::Warn => "warn",
        Tone::Faint => "faint",
    }
}

/// A chart under its title, in a frame that can be moved by keyboard where it is wider than the page.
fn chart(figure: &Figure) -> Markup {
    html! {
        figure class="chart" {
            figcaption { h3 { (figure.title) } p { (figure.sentence) } }
            div tabindex="0" role="group" aria-label=(format!("Chart: {}", figure.title)) { (PreEscaped(drawing::inline(figure))) }
        }
    }
}
