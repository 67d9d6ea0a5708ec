//! Pages for the browser: one file each that needs no network and no framework; the typeface of the charts is in it.
//!
//! ```text
//! frame        head, skip link, style, cautions, foot            every page
//! plot         curves that are moved by a slider, in HTML and SVG      lesson, lesson_data    the page of a lesson
//! drawing      a chart inside a page, in the colours of the page
//! report       charts, tables and words of a run, a comparison or a sweep      compare_result    who wins, and why
//! ```
//!
//! Everything that comes from a file or a name is escaped by the template (`maud`); what is written as it stands is
//! our own: style, script, charts.

pub mod compare;
mod compare_result;
mod drawing;
mod frame;
mod hues;
pub mod lesson;
mod lesson_data;
mod marks;
mod plot;
mod report;
pub mod run;
mod run_result;
mod scale;
pub mod sweep;
mod table;
