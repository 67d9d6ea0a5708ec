//! The page of checks against the outside, `tests/README.md`, as rows.

use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

/// One check against the outside: a line of the page's tables.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What is compared: the words by which a test finds its row.
    pub compared: String,
    /// The published source, library, or what stands in for one.
    pub against: String,
    /// How far apart the two may be.
    pub tolerance: Measure,
    /// Why that far.
    pub why: String,
    /// The largest difference found.
    pub found: Measure,
    /// The test file, as `water_gases.rs`.
    pub file: String,
    /// The test in it.
    pub test: String,
}

/// What a cell says of a size.
#[derive(Debug, Clone, PartialEq)]
pub enum Measure {
    /// A number, in the unit written behind it; percentages as shares.
    Number(f64),
    /// Words: the check is a relation that holds or does not.
    Words(String),
}

impl Measure {
    fn read(cell: &str) -> Measure {
        let mut words = cell.split_whitespace();
        match words.next().and_then(|word| word.parse::<f64>().ok()) {
            Some(number) if words.next() == Some("%") => Measure::Number(number / 100.0),
            Some(number) => Measure::Number(number),
            None => Measure::Words(cell.to_string()),
        }
    }
    /// The number, if it is one.
    pub fn number(&self) -> Option<f64> {
        match self {
            Measure::Number(number) => Some(*number),
            Measure::Words(_) => None,
        }
    }
}

/// Where the page stands.
pub fn place() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/README.md")
}

/// The page as it stands on the disk.
pub fn text() -> String {
    std::fs::read_to_string(place()).expect("tests/README.md")
}

/// The rows of a page; heads, rules and plain text are passed over.
pub fn lines(page: &str) -> Vec<Line> {
    page.lines().filter_map(line).collect()
}

fn line(text: &str) -> Option<Line> {
    let cells = text.strip_prefix("| ")?.strip_suffix(" |")?;
    let cells: Vec<&str> = cells.split(" | ").map(str::trim).collect();
    let [compared, against, tolerance, why, found, test] = cells[..] else {
        return None;
    };
    let (file, test) = test.trim_matches('`').split_once("::")?;
    Some(Line {
        compared: compared.into(),
        against: against.into(),
        tolerance: Measure::read(tolerance),
        why: why.into(),
        found: Measure::read(found),
        file: file.into(),
        test: test.into(),
    })
}

/// The row of these words.
pub fn row(compared: &str) -> Line {
    lines(&text())
        .into_iter()
        .find(|line| line.compared == compared)
        .unwrap_or_else(|| panic!("no row \"{compared}\" in tests/README.md"))
}

/// What is smaller is rounding, which any change of the code stirs: the page prints this instead.
pub const ROUNDING: f64 = 1e-12;

/// A size as the page prints it: two digits, rounded up, so that what is printed was not exceeded.
pub fn rounded_up(size: f64) -> String {
    if size <= ROUNDING {
        return format!("{ROUNDING:e}");
    }
    let digit = 10f64.powi(size.log10().floor() as i32 - 1);
    // what is a whole number of digits but for rounding stays what it is
    let up = (size / digit - 1e-6).ceil() * digit;
    if (1e-3..1e4).contains(&up) {
        let decimals = (1 - up.log10().floor() as i32).max(0) as usize;
        let text = format!("{up:.decimals$}");
        text.strip_suffix(".0").unwrap_or(&text).to_string()
    } else {
        format!("{up:.1e}").replace(".0e", "e")
    }
}

/// Writes what was found into the row of these words, keeping its unit.
pub fn write_found(compared: &str, size: f64) {
    static ONE_AT_A_TIME: Mutex<()> = Mutex::new(());
    let _turn = ONE_AT_A_TIME.lock().unwrap_or_else(PoisonError::into_inner);
    let rewritten: Vec<String> = text()
        .lines()
        .map(|text| match line(text) {
            Some(line) if line.compared == compared => with_found(text, size),
            _ => text.to_string(),
        })
        .collect();
    // whole or not at all: other tests read it meanwhile
    let draft = place().with_extension("md.draft");
    std::fs::write(&draft, rewritten.join("\n") + "\n").expect("a draft of tests/README.md");
    std::fs::rename(draft, place()).expect("tests/README.md");
}

fn with_found(row: &str, size: f64) -> String {
    let mut cells: Vec<String> = row.split(" | ").map(String::from).collect();
    let unit = cells[4]
        .split_once(' ')
        .map_or("", |(_, unit)| unit)
        .to_string();
    let shown = if unit.starts_with('%') {
        100.0 * size
    } else {
        size
    };
    cells[4] = format!("{} {unit}", rounded_up(shown)).trim().to_string();
    cells.join(" | ")
}
