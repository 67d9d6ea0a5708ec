//! A table as Markdown, its columns made even so that it also reads well as plain text.
//!
//! A table with more columns than rows stands sideways: a line per column, a column per row.

use super::{Cell, Table};

/// A cell in words, and whether it stands at the right.
type Set = (String, bool);

/// The whole text, ending with a line feed.
pub fn text(table: &Table) -> String {
    let mut lines: Vec<Vec<Set>> = vec![
        table
            .heads
            .iter()
            .map(|head| (escaped(&head.name), false))
            .collect(),
    ];
    lines.extend(
        table
            .rows
            .iter()
            .map(|cells| cells.iter().map(set).collect()),
    );
    if table.heads.len() > table.rows.len() + 1 {
        lines = turned(&lines);
    }
    laid_out(&lines)
}

fn set(cell: &Cell) -> Set {
    let is_number = matches!(cell, Cell::Count(_) | Cell::Number(_));
    (escaped(&cell.words()), is_number)
}

/// Bars and line breaks would end a cell.
fn escaped(words: &str) -> String {
    words.replace('|', "\\|").replace(['\n', '\r'], " ")
}

fn turned(lines: &[Vec<Set>]) -> Vec<Vec<Set>> {
    let columns = lines.first().map_or(0, Vec::len);
    let column = |at: usize| lines.iter().map(|line| line[at].clone()).collect();
    (0..columns).map(column).collect()
}

/// Longer cells do not widen the others: a paragraph would push numbers off the page.
const WIDEST: usize = 40;

fn laid_out(lines: &[Vec<Set>]) -> String {
    let columns = lines.first().map_or(0, Vec::len);
    let widths: Vec<usize> = (0..columns)
        .map(|at| {
            let sizes = lines.iter().map(|line| line[at].0.chars().count());
            sizes
                .filter(|size| *size <= WIDEST)
                .max()
                .unwrap_or(0)
                .max(3)
        })
        .collect();
    let mut text = String::new();
    for (number, line) in lines.iter().enumerate() {
        text += &row(line, &widths);
        if number == 0 {
            let rules = (0..columns).map(|at| rule(lines, at, widths[at]));
            text += &format!("|{}|\n", rules.collect::<Vec<_>>().join("|"));
        }
    }
    text
}

fn row(line: &[Set], widths: &[usize]) -> String {
    let cells = line.iter().zip(widths);
    let cells = cells.map(|((words, is_number), width)| match is_number {
        true => format!(" {words:>width$} "),
        false => format!(" {words:width$} "),
    });
    format!("|{}|\n", cells.collect::<Vec<_>>().join("|"))
}

/// The line under the heads: a column with a number stands at the right.
fn rule(lines: &[Vec<Set>], at: usize, width: usize) -> String {
    let is_right = lines.iter().any(|line| line[at].1);
    match is_right {
        true => format!("{}:", "-".repeat(width + 1)),
        false => "-".repeat(width + 2),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::output::table::tests::two_tanks;

    #[test]
    fn a_wide_table_stands_sideways() {
        let mut table = two_tanks();
        table.rows.truncate(1);
        let words = "\
            | tank            | a \\| b   |\n\
            |-----------------|---------:|\n\
            | peak_mg_n_per_l | 0.333333 |\n\
            | visits          |        3 |\n";
        assert_eq!(text(&table), words);
    }
}
