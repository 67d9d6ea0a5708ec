//! Problems of a scenario: where, what was found, what is allowed, what to try.

use std::ops::Range;

use super::draw;
use super::files::Files;

/// A stretch of one of the files.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// Which file, in the order in which they were read.
    pub file: usize,
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Place {
    /// A stretch of bytes of a file.
    pub fn new(file: usize, span: Range<usize>) -> Place {
        Place {
            file,
            start: span.start,
            end: span.end,
        }
    }
    /// Whether two stretches of one file have a byte in common, or touch.
    pub fn touches(&self, other: &Place) -> bool {
        self.file == other.file && self.start <= other.end && other.start <= self.end
    }
}

/// One thing that is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Where; none when it concerns a whole file.
    pub place: Option<Place>,
    /// The file it concerns when there is no place, as a name.
    pub file_name: Option<String>,
    /// What is wrong, in one line.
    pub title: String,
    /// What is allowed, beside the caret; may be empty.
    pub label: String,
    /// Other places that belong to it, each with a few words.
    pub also: Vec<(Place, String)>,
    /// What to try, one line each.
    pub help: Vec<String>,
}

impl Problem {
    /// A problem at a place.
    pub fn at(place: &Place, title: impl Into<String>) -> Problem {
        Problem {
            place: Some(place.clone()),
            file_name: None,
            title: one_line(&title.into(), LONGEST_TITLE),
            label: String::new(),
            also: Vec::new(),
            help: Vec::new(),
        }
    }
    /// A problem of a whole file.
    pub fn of_file(name: impl Into<String>, title: impl Into<String>) -> Problem {
        Problem {
            place: None,
            file_name: Some(name.into()),
            title: one_line(&title.into(), LONGEST_TITLE),
            label: String::new(),
            also: Vec::new(),
            help: Vec::new(),
        }
    }
    /// With words beside the caret.
    pub fn label(mut self, label: impl Into<String>) -> Problem {
        self.label = one_line(&label.into(), LONGEST_ADVICE);
        self
    }
    /// With one more line of advice.
    pub fn help(mut self, line: impl Into<String>) -> Problem {
        self.help.push(one_line(&line.into(), LONGEST_ADVICE));
        self
    }
    /// With another place that belongs to it.
    pub fn also(mut self, place: &Place, words: impl Into<String>) -> Problem {
        self.also
            .push((place.clone(), one_line(&words.into(), LONGEST_ADVICE)));
        self
    }
}

/// Longest title, in signs.
const LONGEST_TITLE: usize = 200;
/// Longest label or line of advice, in signs: lists of all that is allowed are long.
const LONGEST_ADVICE: usize = 1000;

/// A text that may hold anything the user wrote, made fit for one line of a terminal.
fn one_line(text: &str, longest: usize) -> String {
    let sign = |sign: char| if sign.is_control() { '\u{fffd}' } else { sign };
    let mut line: String = text.chars().take(longest).map(sign).collect();
    if text.chars().nth(longest).is_some() {
        line.push('…');
    }
    line
}

/// How many problems are shown at once.
const SHOWN: usize = 20;

/// All problems of a scenario, with the texts they point into.
#[derive(Debug, Clone)]
pub struct Problems {
    /// Name of the scenario, as the user gave it.
    pub name: String,
    /// The files that were read.
    pub files: Files,
    /// The problems, sorted by place.
    pub list: Vec<Problem>,
}

impl Problems {
    /// Gathers problems, sorted by place, each told once.
    pub fn new(name: &str, files: Files, mut list: Vec<Problem>) -> Problems {
        list.sort_by(|a, b| (&a.place, &a.title).cmp(&(&b.place, &b.title)));
        list.dedup();
        Problems {
            name: name.to_string(),
            files,
            list,
        }
    }
    /// All problems as text, coloured on request; the last line counts them.
    pub fn render(&self, styled: bool) -> String {
        let mut text = String::new();
        for problem in self.list.iter().take(SHOWN) {
            text += &draw::problem(problem, &self.files, styled);
            text += "\n\n";
        }
        if self.list.len() > SHOWN {
            text += &format!("and {} more\n\n", self.list.len() - SHOWN);
        }
        let count = match self.list.len() {
            1 => "1 problem".to_string(),
            many => format!("{many} problems"),
        };
        text += &format!("{count} in {}; nothing was run\n", self.name);
        text
    }
}

impl std::fmt::Display for Problems {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.render(false))
    }
}

impl std::error::Error for Problems {}
