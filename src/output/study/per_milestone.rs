//! Tables with rows for every milestone of a study.

use crate::analysis::study::findings::Found;
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};

use super::Story;

/// A table of what is found, a row for each thing that is picked of a milestone.
pub fn table<'a, T: 'a>(
    (file, heads): (&'static str, Vec<Head>),
    story: &Story<'a>,
    of: impl Fn(&'a Found) -> &'a [T],
    row: impl Fn(&'a Found, &'a T) -> Vec<Cell>,
) -> Table {
    let mut rows = Vec::new();
    for found in &story.findings.found {
        rows.extend(of(found).iter().map(|one| row(found, one)));
    }
    Table { file, heads, rows }
}
