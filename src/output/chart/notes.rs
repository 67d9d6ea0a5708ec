//! Notes under a chart: a bold word, then words that run on over as many lines as they need.

use super::figure::Anchor;
use super::fonts::Face;
use super::sheet::{LEFT, Sheet, bold, plain};
use super::style::{INK, MUTED, NAME};

/// Where the words begin, and from one line to the next, pixels.
const WORDS: f64 = 160.0;
const LINE: f64 = 18.0;

/// Right edge that words may reach: that of the tables above.
const RIGHT_EDGE: f64 = 1136.0;

/// A note.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Note {
    lead: &'static str,
    lines: Vec<String>,
}

impl Note {
    /// A note broken into lines as wide as the table above it.
    pub fn new(lead: &'static str, words: String) -> Note {
        Note {
            lead,
            lines: wrapped(&words, RIGHT_EDGE - WORDS),
        }
    }
}

/// Height of all lines, pixels.
pub fn height_of(notes: &[Note]) -> f64 {
    let lines: usize = notes.iter().map(|note| note.lines.len()).sum();
    LINE * lines as f64
}

/// Writes notes so that the last line stands on a base line.
pub fn write(sheet: &mut Sheet, notes: &[Note], last: f64) {
    let mut baseline = last - height_of(notes) + LINE;
    for note in notes {
        sheet.say(vec![bold(note.lead, INK)], Anchor::Start, LEFT, baseline);
        for line in &note.lines {
            sheet.say(vec![plain(line, MUTED)], Anchor::Start, WORDS, baseline);
            baseline += LINE;
        }
    }
}

/// Words in lines no wider than the room; a word wider than that has a line of its own.
fn wrapped(words: &str, room: f64) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in words.split(' ') {
        let line = lines.len() - 1;
        let longer = match lines[line].is_empty() {
            true => word.to_string(),
            false => format!("{} {word}", lines[line]),
        };
        let fits = Face::Regular.width(&Face::Regular.drawable(&longer), NAME) <= room;
        if fits || lines[line].is_empty() {
            lines[line] = longer;
        } else {
            lines.push(word.to_string());
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_run_on_over_lines_that_fit_and_none_is_lost() {
        let words = "one two three four five six seven eight nine ten";
        let lines = wrapped(words, 120.0);
        assert!(lines.len() > 2 && lines.join(" ") == words);
        let wide = |line: &String| Face::Regular.width(line, NAME) > 120.0;
        assert!(!lines.iter().any(wide), "{lines:?}");
        assert_eq!(wrapped("unbreakable", 3.0), ["unbreakable"]);
    }
}
