//! A table for the terminal or for a spreadsheet.

use comfy_table::{ContentArrangement, LineStyle, Table, TableStyle, presets};

/// A rule under the heads and nothing else.
const STYLE: TableStyle =
    presets::NOTHING.header_separator(LineStyle::none().fill('─').junction('─'));

/// A table with plain cells and perhaps a line below it.
#[derive(Debug, Clone)]
pub struct Sheet {
    heads: Vec<String>,
    rows: Vec<Vec<String>>,
    foot: String,
}

impl Sheet {
    /// A table with these heads and no rows.
    pub fn new<S: ToString>(heads: &[S]) -> Sheet {
        Sheet {
            heads: heads.iter().map(ToString::to_string).collect(),
            rows: Vec::new(),
            foot: String::new(),
        }
    }
    /// Adds a row.
    pub fn row(&mut self, cells: impl IntoIterator<Item = String>) {
        self.rows.push(cells.into_iter().collect());
    }
    /// Sets the line below the table; it is not part of the CSV.
    pub fn foot(&mut self, words: impl Into<String>) {
        self.foot = words.into();
    }
    /// The table for a terminal so many columns wide; any width where there is none.
    pub fn table(&self, width: Option<usize>) -> String {
        let mut table = Table::new();
        table.load_style(STYLE);
        if let Some(columns) = width.and_then(|columns| u16::try_from(columns).ok()) {
            table.set_width(columns);
            table.set_content_arrangement(ContentArrangement::Dynamic);
        }
        table.set_header(&self.heads);
        table.add_rows(&self.rows);
        let mut text = table.trim_fmt();
        text.push('\n');
        if !self.foot.is_empty() {
            text.push('\n');
            text.push_str(&self.foot);
            text.push('\n');
        }
        text
    }
    /// The table as CSV.
    pub fn csv(&self) -> String {
        let mut writer = csv::Writer::from_writer(Vec::new());
        let records = std::iter::once(&self.heads).chain(&self.rows);
        for record in records {
            writer
                .write_record(record)
                .expect("writing rows of one length into memory cannot fail");
        }
        let bytes = writer.into_inner().unwrap_or_default();
        String::from_utf8_lossy(&bytes).into_owned()
    }
}
