//! `results.csv`: a line a row, in the order of their numbers: inputs, milestones, status.
//!
//! What is found by a study is worked out from these lines, not from the numbers behind them, so that it is the same
//! whether the rows were run at once, in many sittings or on many machines.

use std::io::{self, BufRead};

use crate::analysis::study::input::Spread;
use crate::analysis::study::run::Ran;
use crate::analysis::study::{Row, Study};
use crate::output::csv::{Head, Table};
use crate::output::number::push_six_digits;

/// Name of the file.
pub const FILE: &str = "results.csv";
/// Status of a row that did not fail.
const OK: &str = "ok";
/// Columns beside inputs and milestones: row, member, status.
const OTHERS: usize = 3;

/// Writes and reads the lines of a study.
#[derive(Debug, Clone, Copy)]
pub struct Results<'a> {
    study: &'a Study,
}

impl<'a> Results<'a> {
    /// The lines of a study.
    pub fn of(study: &'a Study) -> Results<'a> {
        Results { study }
    }

    /// The file without its rows, for the list of columns.
    pub fn table(&self) -> Table {
        let inputs = self.study.inputs.iter().map(|input| Head {
            name: input.name.clone(),
            unit: unit(input.shown_unit()),
            meaning: match input.words.as_str() {
                "" => "as you wrote it".into(),
                words => words.into(),
            },
            derived: format!("{}; empty where it does not vary", input.source),
        });
        let milestones = self.study.milestones.iter().map(|one| Head {
            name: one.name.into(),
            unit: unit(one.unit),
            meaning: one.what.into(),
            derived: "the run of the row; empty where it failed".into(),
        });
        let counted = "number of the row, divided by the rows of a member";
        let mut heads = vec![
            Head::plain(
                "row",
                "number of the row, from 0",
                "the design of the study",
            ),
            Head::plain(
                "member",
                "point, trajectory or step it belongs to, from 0",
                counted,
            ),
        ];
        heads.extend(inputs.chain(milestones));
        heads.push(Head::plain(
            "status",
            "ok, or why the run failed",
            "the run of the row",
        ));
        Table {
            file: FILE,
            heads,
            rows: Vec::new(),
        }
    }

    /// The first line, with its end.
    pub fn header(&self) -> String {
        String::from_utf8_lossy(&self.table().bytes()).into_owned()
    }

    /// The lines of some rows, each with its end.
    pub fn lines(&self, rows: &[Ran]) -> String {
        let mut text = String::new();
        for ran in rows {
            self.push(ran, &mut text);
        }
        text
    }

    fn push(&self, ran: &Ran, text: &mut String) {
        let number = ran.row.number;
        let member = number / self.study.rows_per_member() as u64;
        text.push_str(&format!("{number},{member},"));
        for (input, value) in self.study.inputs.iter().zip(&ran.values) {
            match (&input.spread, value) {
                (_, None) => {}
                (Spread::Settings(settings), Some(at)) => {
                    push_quoted(text, settings.get(*at as usize).map_or("", String::as_str));
                }
                (_, Some(value)) => push_six_digits(text, input.shown(*value)),
            }
            text.push(',');
        }
        let outputs = ran.row.outputs.as_deref();
        let spoilt = outputs.and_then(|all| all.iter().position(|output| !output.is_finite()));
        for at in 0..self.study.milestones.len() {
            if let (Some(outputs), None) = (outputs, spoilt) {
                push_six_digits(text, outputs[at]);
            }
            text.push(',');
        }
        let milestone = |at: usize| self.study.milestones[at].name;
        let spoilt = spoilt.map(|at| format!("{} is no number", milestone(at)));
        let why = ran.failed.as_ref().map(ToString::to_string).or(spoilt);
        push_quoted(text, why.as_deref().unwrap_or(OK));
        text.push('\n');
    }

    /// A row from its line; none when it is no whole line of this study.
    pub fn row(&self, line: &str) -> Option<Row> {
        let cells = cells(line.strip_suffix('\n')?)?;
        let (inputs, milestones) = (self.study.inputs.len(), self.study.milestones.len());
        if cells.len() != inputs + milestones + OTHERS {
            return None;
        }
        let number: u64 = cells[0]
            .parse()
            .ok()
            .filter(|number| *number < self.study.rows())?;
        let outputs = match cells.last()?.as_str() {
            OK => Some(numbers(&cells[2 + inputs..2 + inputs + milestones])?),
            _ => None,
        };
        Some(Row {
            number,
            places: self.study.places(number),
            outputs,
        })
    }

    /// Reads lines, from a row on, as far as they are whole and in order; `take` gets each row with its line. Gives
    /// how many bytes they are, with the first line, and the number of the row that is next.
    ///
    /// # Errors
    /// When the file cannot be read, or `take` refuses.
    pub fn read(
        &self,
        mut from: impl BufRead,
        first: u64,
        mut take: impl FnMut(Row, &str) -> io::Result<()>,
    ) -> io::Result<(u64, u64)> {
        let (mut bytes, mut next) = (0, first);
        let mut line = String::new();
        if from.read_line(&mut line)? == 0 || line != self.header() {
            return Ok((bytes, next));
        }
        loop {
            bytes += line.len() as u64;
            line.clear();
            let read = match from.read_line(&mut line) {
                // a torn line may end within a letter
                Err(why) if why.kind() == io::ErrorKind::InvalidData => 0,
                other => other?,
            };
            let row = if read == 0 { None } else { self.row(&line) };
            match row.filter(|row| row.number == next) {
                Some(row) => take(row, &line)?,
                None => return Ok((bytes, next)),
            }
            next += 1;
        }
    }
}

fn unit(unit: &str) -> String {
    if unit == "1" {
        String::new()
    } else {
        unit.into()
    }
}

fn numbers(cells: &[String]) -> Option<Vec<f64>> {
    cells.iter().map(|cell| cell.parse().ok()).collect()
}

/// A cell with whatever is in it on one line.
fn push_quoted(text: &mut String, cell: &str) {
    let has = |signs: &[char]| cell.contains(signs);
    if !has(&[',', '"', '\n', '\r']) {
        return text.push_str(cell);
    }
    text.push('"');
    text.push_str(&cell.replace(['\n', '\r'], " ").replace('"', "\"\""));
    text.push('"');
}

fn cells(line: &str) -> Option<Vec<String>> {
    if !line.contains('"') {
        return Some(line.split(',').map(String::from).collect());
    }
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(line.as_bytes());
    let record = reader.records().next()?.ok()?;
    Some(record.iter().map(String::from).collect())
}
