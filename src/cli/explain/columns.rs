//! `explain columns`.

use super::sheet::Sheet;
use crate::output::columns;

/// Every column of `series.csv`; columns.csv beside a run lists those of all files.
pub fn sheet() -> Sheet {
    let mut sheet = Sheet::new(&["column", "unit", "meaning", "derived"]);
    for column in columns::every() {
        sheet.row([
            column.name,
            column.unit.to_string(),
            column.meaning,
            column.derived.to_string(),
        ]);
    }
    sheet.foot(
        "These head series.csv after day and time; columns.csv beside a run explains every file.",
    );
    sheet
}
