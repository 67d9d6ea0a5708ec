//! The options of `compare`.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::into::Into;
use super::one_of::OneOf;
use super::plausible::how_many;
use crate::analysis::compare::Common;
use crate::analysis::forecast::{USUAL_MEMBERS, USUAL_SEED};
use crate::output::table::Form;

/// Options of `compare`.
#[derive(Debug, Clone, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill compare daily.toml weekly.toml none.toml\n      \
        one screen, and tables and charts in output/compare-daily-weekly-none/\n  \
        firstfill compare daily.toml weekly.toml --format markdown > table.md\n      \
        the table instead of the screen; the folder is written all the same"
)]
pub struct Compare {
    /// Two to eight scenarios, TOML files, the first the one that the others are held against; or the
    /// manifest.json of an earlier comparison, to repeat it
    #[arg(value_name = "FILE", required = true)]
    pub files: Vec<PathBuf>,
    /// Where the results go.
    #[command(flatten)]
    pub into: Into,
    /// Leave the charts out; the tables are written all the same
    #[arg(long)]
    pub no_charts: bool,
    /// Write page.html too: charts, tables and words in one file for the browser, to be sent or printed
    #[arg(long)]
    pub page: bool,
    /// Print all there is to say, not one screen of it: all figures, the whole reasons, every difference between the
    /// files; the files are the same
    #[arg(long, conflicts_with = "format")]
    pub full: bool,
    /// Print table.csv in this form instead of the screen
    #[arg(long, value_name = "FORM", value_parser = OneOf::<TableForm>::new())]
    pub format: Option<TableForm>,
    /// How many plausible tanks each plan is run on [default: 256]
    #[arg(long, value_name = "N", value_parser = how_many)]
    pub members: Option<u32>,
    /// Another draw of plausible tanks; the same seed gives the same tanks [default: 1]
    #[arg(long, value_name = "N")]
    pub seed: Option<u64>,
}

impl Compare {
    /// The plausible tanks.
    pub fn common(&self) -> Common {
        Common {
            members: self
                .members
                .map_or(USUAL_MEMBERS, |members| members as usize),
            seed: self.seed.unwrap_or(USUAL_SEED),
        }
    }
}

/// How a table is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum TableForm {
    /// Commas between values, for a spreadsheet
    Csv,
    /// For programs: columns with their units, then one object per row
    Json,
    /// For a page of notes
    Markdown,
}

impl From<TableForm> for Form {
    fn from(form: TableForm) -> Form {
        match form {
            TableForm::Csv => Form::Csv,
            TableForm::Json => Form::Json,
            TableForm::Markdown => Form::Markdown,
        }
    }
}
