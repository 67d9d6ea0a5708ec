//! What spoiled files are made of: every valid file of the project, and words that mean trouble.

use std::fs;
use std::path::Path;

use firstfill::base::units;
use firstfill::scenario::keys::KEYS;
use rand::RngExt;
use rand::rngs::ChaCha8Rng;

/// Words that programs stumble over: numbers too large or none, ranges without end, odd signs.
const TROUBLE: &[&str] = &[
    "",
    " ",
    "..",
    "0..",
    "..7",
    "1..4000000000",
    "1..9999",
    "9999..1",
    "0..0",
    "-1..5",
    "0",
    "-0",
    "-1",
    "00",
    "1e999",
    "-1e999",
    "1e-999",
    "1e308",
    "5e-324",
    "nan",
    "inf",
    "-inf",
    "+5",
    ".5",
    "5.",
    "9223372036854775807",
    "9223372036854775808",
    "-9223372036854775808",
    "4294967295",
    "4294967296",
    "18446744073709551616",
    "0x7fffffffffffffff",
    "0b1",
    "1_000",
    "1e5",
    "NaN %",
    "inf L",
    "1e308 m",
    "1e-320 L",
    "-5 °C",
    "-273.15 °C",
    "0 L",
    "0 %",
    "100 %",
    "1e2 %",
    "50,5 %",
    "5 %..7 %",
    "24:00",
    "24:01",
    "00:00..24:00",
    "00:00..00:00",
    "23:59..00:00",
    "99:99",
    "9:3",
    "-1:00..2:00",
    "2027-02-29",
    "2027-03-06",
    "2027-03-06 24:00",
    "-9999-01-01",
    "9999-12-31",
    "9999-12-31..9999-12-31",
    "0000-00-00",
    "1970-01-01T00:00:00Z",
    "none",
    "true",
    "false",
    "Sun",
    "tap",
    "pure",
    "ro",
    "on",
    "off",
    "\u{feff}",
    "\0",
    "\r",
    "\r\n",
    "\n",
    "\t",
    "\\",
    "\\u0000",
    "\\uD800",
    "\"",
    "\"\"\"",
    "'",
    "'''",
    "#",
    "[",
    "]",
    "[[",
    "]]",
    "{",
    "}",
    "=",
    ",",
    ".",
    "\u{202e}",
    "\u{2028}",
    "\u{85}",
    "é",
    "日本語",
    "👨‍👩‍👧‍👦",
    "a\u{301}\u{301}\u{301}\u{301}",
    "°",
    "µ",
    "½",
    "⁻¹",
    "m²",
    "x",
    "×",
    "60 x 30 x 36 cm",
    "60 x 30 cm",
    "1 x 1 x 1 mm",
    "1e9 x 1e9 x 1e9 km",
    "xxxx",
    "../scenarios/sixty.toml",
    "sixty.toml",
    ".",
    "/",
    "/dev/null",
    "sixty.toml\0",
    "dense-still.toml",
    "power-cut.toml",
    "\u{1b}[31m",
    "%s%n",
    "{}",
    "__proto__",
];

/// Valid files and words.
pub struct Corpus {
    files: Vec<(String, String)>,
    words: Vec<String>,
}

impl Corpus {
    /// All scenarios of the project with the words in them, the documented keys, and trouble.
    pub fn of_the_project() -> Corpus {
        let files = files();
        assert!(files.len() > 12, "only {} valid files found", files.len());
        let mut words: Vec<String> = TROUBLE.iter().map(ToString::to_string).collect();
        words.extend(files.iter().flat_map(|(_, text)| quoted(text)));
        words.extend(KEYS.iter().map(|key| key.example.trim_matches('"').into()));
        for kind in units::all_kinds() {
            words.extend(kind.examples.iter().map(ToString::to_string));
            let spelled = kind.units.iter().flat_map(|unit| unit.spellings);
            words.extend(spelled.map(|unit| format!("1.5 {unit}")));
        }
        words.sort();
        words.dedup();
        Corpus { files, words }
    }

    /// Some valid file: its name, and its text.
    pub fn file(&self, chance: &mut ChaCha8Rng) -> (&str, &str) {
        let (name, text) = &self.files[chance.random_range(0..self.files.len())];
        (name, text)
    }

    /// Some word; one in three means trouble.
    pub fn word(&self, chance: &mut ChaCha8Rng) -> &str {
        if chance.random_ratio(1, 3) {
            TROUBLE[chance.random_range(0..TROUBLE.len())]
        } else {
            &self.words[chance.random_range(0..self.words.len())]
        }
    }

    /// A line that could stand in a scenario, with its full path.
    pub fn line(&self, chance: &mut ChaCha8Rng) -> String {
        let key = &KEYS[chance.random_range(0..KEYS.len())];
        let path = key.path.replace("NAME", "new");
        format!("{path} = {}", key.example)
    }
}

fn files() -> Vec<(String, String)> {
    let mut paths = Vec::new();
    for folder in ["scenarios", "tests/scenarios", "demo-data"] {
        let entries = fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join(folder));
        paths.extend(entries.unwrap().map(|entry| entry.unwrap().path()));
    }
    paths.retain(|path| path.extension().is_some_and(|end| end == "toml"));
    paths.sort();
    let mut files: Vec<(String, String)> = paths
        .iter()
        .map(|path| {
            (
                path.display().to_string(),
                fs::read_to_string(path).unwrap(),
            )
        })
        .collect();
    let pages = ["README.md", "demo-data/README.md"];
    files.extend(pages.iter().flat_map(|page| fenced(page)));
    files
}

/// The scenarios printed in a page of documentation.
fn fenced(page: &str) -> Vec<(String, String)> {
    let text = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(page)).unwrap();
    let blocks = text.split("```toml\n").skip(1);
    blocks
        .filter_map(|block| block.split_once("\n```"))
        .map(|(block, _)| ("scenarios/printed.toml".to_string(), block.to_string()))
        .collect()
}

fn quoted(text: &str) -> Vec<String> {
    text.split('"')
        .skip(1)
        .step_by(2)
        .map(String::from)
        .collect()
}
