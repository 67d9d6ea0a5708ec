//! The shape of a scenario: a tree of values, each with its place in a file.

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::problem::{Place, Problem};

/// A value with its place.
#[derive(Debug, Clone)]
pub struct Node {
    /// Where it is written.
    pub place: Place,
    /// What it is.
    pub value: Value,
}

/// What can be written after an equals sign.
#[derive(Debug, Clone)]
pub enum Value {
    /// A text in quotes.
    Text(String),
    /// A whole number.
    Whole(i64),
    /// A number with a point.
    Number(f64),
    /// True or false.
    Truth(bool),
    /// A bare date or time.
    Moment(toml::value::Datetime),
    /// A list in brackets.
    List(Vec<Node>),
    /// A section or an inline table.
    Table(Table),
}

impl Value {
    /// What it is, in words, for messages.
    pub fn words(&self) -> String {
        match self {
            Value::Text(text) => format!("the text \"{text}\""),
            Value::Whole(number) => format!("the number {number}"),
            Value::Number(number) => format!("the number {number}"),
            Value::Truth(truth) => format!("{truth}"),
            Value::Moment(moment) => format!("the bare date or time {moment}"),
            Value::List(_) => "a list".to_string(),
            Value::Table(_) => "a section".to_string(),
        }
    }
    /// What it is, short: a text in its quotes.
    pub fn shown(&self) -> String {
        match self {
            Value::Text(text) => format!("\"{text}\""),
            Value::Whole(_) | Value::Number(_) => self.written(),
            _ => self.words(),
        }
    }
    /// As it would be written in a scenario.
    pub fn written(&self) -> String {
        match self {
            Value::Text(text) => text.clone(),
            Value::Whole(number) => number.to_string(),
            Value::Number(number) => number.to_string(),
            Value::Truth(truth) => truth.to_string(),
            Value::Moment(moment) => moment.to_string(),
            Value::List(list) => {
                let items: Vec<String> = list.iter().map(|n| n.value.inside()).collect();
                format!("[{}]", items.join(", "))
            }
            Value::Table(table) => {
                let items: Vec<String> = table
                    .entries
                    .iter()
                    .map(|e| format!("{} = {}", e.key, e.node.value.inside()))
                    .collect();
                format!("{{ {} }}", items.join(", "))
            }
        }
    }
    /// As it is written inside a list or a table: texts in their quotes.
    fn inside(&self) -> String {
        match self {
            Value::Text(text) => format!("\"{text}\""),
            other => other.written(),
        }
    }
}

/// A section: entries in the order in which they are written.
#[derive(Debug, Clone, Default)]
pub struct Table {
    /// The entries.
    pub entries: Vec<Entry>,
}

/// A key with its value.
#[derive(Debug, Clone)]
pub struct Entry {
    /// The key.
    pub key: String,
    /// Where the key is written.
    pub key_place: Place,
    /// The value.
    pub node: Node,
}

impl Table {
    /// The entry of a key.
    pub fn get(&self, key: &str) -> Option<&Entry> {
        self.entries.iter().find(|entry| entry.key == key)
    }
}

/// Parses a text; what could be understood comes back with all syntax errors.
pub fn parse(file: usize, text: &str) -> (Table, Vec<Problem>) {
    let (table, errors) = DeTable::parse_recoverable(text);
    let problems: Vec<Problem> = errors
        .iter()
        .map(|error| {
            let end = text.len();
            let span = error.span().unwrap_or(end..end);
            syntax(&Place::new(file, span), error.message())
        })
        .collect();
    (convert(file, table.get_ref()), problems)
}

/// A syntax error in plain words.
fn syntax(place: &Place, message: &str) -> Problem {
    let message = message.trim().replace('\n', ", ");
    let problem = Problem::at(place, format!("this line cannot be read: {message}"));
    if message.contains("quote") || message.contains("string") || message.contains("extra") {
        problem.help("texts and quantities stand in quotes: temperature = \"24.5 °C\"")
    } else if message.contains("duplicate") {
        problem.help("each key may be given once; delete one of the two")
    } else {
        problem.help("a line is either a [section] or key = value")
    }
}

fn convert(file: usize, table: &DeTable<'_>) -> Table {
    let entries = table
        .iter()
        .map(|(key, value)| Entry {
            key: one_line(key.get_ref()),
            key_place: Place::new(file, key.span()),
            node: node(file, value),
        })
        .collect();
    Table { entries }
}

/// A text or a key as one line: line breaks, tabs and signs that no picture can show are spaces.
fn one_line(text: &str) -> String {
    text.replace(
        |sign: char| sign.is_control() || matches!(sign, '\u{fffe}' | '\u{ffff}'),
        " ",
    )
}

fn node(file: usize, value: &Spanned<DeValue<'_>>) -> Node {
    let converted = match value.get_ref() {
        DeValue::String(text) => Value::Text(one_line(text)),
        DeValue::Integer(number) => i64::from_str_radix(number.as_str(), number.radix())
            .map_or_else(
                |_| Value::Number(number.as_str().parse().unwrap_or(f64::NAN)),
                Value::Whole,
            ),
        DeValue::Float(number) => Value::Number(number.as_str().parse().unwrap_or(f64::NAN)),
        DeValue::Boolean(truth) => Value::Truth(*truth),
        DeValue::Datetime(moment) => Value::Moment(*moment),
        DeValue::Array(list) => Value::List(list.iter().map(|item| node(file, item)).collect()),
        DeValue::Table(table) => Value::Table(convert(file, table)),
    };
    Node {
        place: Place::new(file, value.span()),
        value: converted,
    }
}
