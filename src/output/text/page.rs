//! A page of labelled blocks, wrapped to a width, with a little colour.
//!
//! Colour is always written; whoever prints the page strips it where it is not wanted.

use anstyle::{AnsiColor, Style};

/// How a line is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// As it is.
    Plain,
    /// The answer.
    Strong,
    /// Something to see to.
    Warn,
    /// Beside the point for most readers.
    Faint,
}

impl Tone {
    fn style(self) -> Style {
        match self {
            Tone::Plain => Style::new(),
            Tone::Strong => Style::new().bold(),
            Tone::Warn => AnsiColor::Yellow.on_default(),
            Tone::Faint => Style::new().dimmed(),
        }
    }
}

#[derive(Debug, Clone)]
struct Line {
    label: String,
    tone: Tone,
    text: String,
}

/// A page, line by line.
#[derive(Debug, Clone, Default)]
pub struct Page {
    lines: Vec<Line>,
}

const LABEL: usize = 12;
/// Pages are never wider than this.
pub const WIDEST: usize = 100;
const NARROWEST: usize = 40;

impl Page {
    /// Adds a line that opens a block.
    pub fn block(&mut self, label: &str, tone: Tone, text: impl Into<String>) {
        self.lines.push(Line {
            label: label.into(),
            tone,
            text: text.into(),
        });
    }
    /// Adds a line to the block that is open.
    pub fn line(&mut self, tone: Tone, text: impl Into<String>) {
        self.block("", tone, text);
    }
    /// Adds an empty line.
    pub fn gap(&mut self) {
        self.line(Tone::Plain, "");
    }
    /// Its blocks, each a label with its lines; lines before the first label have an empty one.
    pub fn blocks(&self) -> Vec<(&str, Vec<(Tone, &str)>)> {
        let mut blocks: Vec<(&str, Vec<(Tone, &str)>)> = Vec::new();
        for line in &self.lines {
            if !line.label.is_empty() || blocks.is_empty() {
                blocks.push((&line.label, Vec::new()));
            }
            if let (Some((_, lines)), false) = (blocks.last_mut(), line.text.trim().is_empty()) {
                lines.push((line.tone, line.text.trim_end()));
            }
        }
        blocks
    }
    /// The page as text, at most `width` columns wide, with colour.
    pub fn render(&self, width: usize) -> String {
        let width = width.clamp(NARROWEST, WIDEST);
        let mut page = String::new();
        for line in &self.lines {
            render_line(&mut page, line, width);
        }
        page
    }
}

fn render_line(page: &mut String, line: &Line, width: usize) {
    let strong = Tone::Strong.style();
    let style = line.tone.style();
    for (at, words) in wrap(&line.text, width - LABEL).iter().enumerate() {
        let label = if at == 0 { line.label.as_str() } else { "" };
        if !label.is_empty() {
            page.push_str(&format!("{strong}{label:LABEL$}{strong:#}"));
        } else if !words.is_empty() {
            page.push_str(&" ".repeat(LABEL));
        }
        page.push_str(&format!("{style}{words}{style:#}"));
        page.push('\n');
    }
}

/// Breaks a text between words; what follows the first line keeps its indent and two more columns.
fn wrap(text: &str, width: usize) -> Vec<String> {
    let indent = text.len() - text.trim_start().len();
    let hang = " ".repeat(indent + 2);
    let mut lines = Vec::new();
    let mut line = String::new();
    // no-break spaces and runs of spaces inside a line are kept, for columns
    for word in text.split_inclusive(' ') {
        let fits = line.chars().count() + word.trim_end().chars().count() <= width;
        if !fits && !line.trim().is_empty() {
            lines.push(line.trim_end().to_string());
            line = hang.clone();
        }
        line.push_str(word);
    }
    lines.push(line.trim_end().to_string());
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use anstream::adapter::strip_str;

    #[test]
    fn long_lines_break_between_words_and_hang_under_their_block() {
        let mut page = Page::default();
        page.block("Ready", Tone::Strong, "one two three four five six seven");
        let text = strip_str(&page.render(40)).to_string();
        assert_eq!(
            text,
            "Ready       one two three four five six\n              seven\n"
        );
    }

    #[test]
    fn no_line_is_wider_than_the_page() {
        let mut page = Page::default();
        page.block("Notices", Tone::Plain, "word ".repeat(80));
        let text = strip_str(&page.render(72)).to_string();
        assert!(text.lines().all(|line| line.chars().count() <= 72));
    }
}
