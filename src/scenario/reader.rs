//! Reads one section: knows which keys were asked for, and reports those nobody asked for.
//!
//! A reader never returns early: what is wrong goes to the [`Desk`], and reading goes on.

use std::cell::RefCell;

use crate::analysis::case::SetBy;
use crate::base::units::{Kind, Unit, digits, quantity};

use super::desk::Desk;
use super::keys;
use super::problem::{Place, Problem};
use super::refusal;
use super::tree::{Entry, Node, Table, Value};
use super::words::closest;

/// What came of asking for a key.
#[derive(Debug, Clone)]
pub enum Read<T> {
    /// Not written, or written as `"none"`.
    Absent,
    /// Written, but wrong; the problem is told.
    Bad(Place),
    /// Written and understood.
    Given(T, Place),
}

impl<T> Read<T> {
    /// The value, if it was given.
    pub fn value(self) -> Option<T> {
        match self {
            Read::Given(value, _) => Some(value),
            _ => None,
        }
    }
    /// A look at the value, if it was given.
    pub fn seen(&self) -> Option<&T> {
        match self {
            Read::Given(value, _) => Some(value),
            _ => None,
        }
    }
    /// The value, or a stand-in where it is absent or wrong.
    pub fn or(self, stand_in: T) -> T {
        self.value().unwrap_or(stand_in)
    }
    /// Where it is written, right or wrong.
    pub fn place(&self) -> Option<&Place> {
        match self {
            Read::Absent => None,
            Read::Bad(place) | Read::Given(_, place) => Some(place),
        }
    }
    /// Whether nothing is written.
    pub fn is_absent(&self) -> bool {
        matches!(self, Read::Absent)
    }
    /// Whether it is written and wrong.
    pub fn is_bad(&self) -> bool {
        matches!(self, Read::Bad(_))
    }
    /// The same with another value.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Read<U> {
        match self {
            Read::Absent => Read::Absent,
            Read::Bad(place) => Read::Bad(place),
            Read::Given(value, place) => Read::Given(change(value), place),
        }
    }
}

/// A section that is being read.
pub struct Reader<'a> {
    /// Where problems go.
    pub desk: &'a Desk,
    /// Dotted path of the section, empty for the whole file.
    pub path: String,
    /// The same path as the documentation of keys has it.
    pub pattern: String,
    /// Where the section begins.
    pub place: Option<Place>,
    table: Option<&'a Table>,
    asked: RefCell<Vec<&'static str>>,
}

impl<'a> Reader<'a> {
    /// A reader of a whole file.
    pub fn of_file(desk: &'a Desk, table: &'a Table) -> Reader<'a> {
        Reader {
            desk,
            path: String::new(),
            pattern: String::new(),
            place: None,
            table: Some(table),
            asked: RefCell::default(),
        }
    }
    /// Whether the section is there.
    pub fn is_there(&self) -> bool {
        self.table.is_some()
    }
    /// The dotted path of a key.
    pub fn path_of(&self, key: &str) -> String {
        dotted(&self.path, key)
    }
    fn pattern_of(&self, key: &str) -> String {
        dotted(&self.pattern, key)
    }
    /// The entry of a key, whatever its value.
    pub fn entry(&self, key: &'static str) -> Option<&'a Entry> {
        debug_assert!(
            keys::is_known(&self.pattern_of(key)),
            "{} is not documented",
            self.pattern_of(key)
        );
        if !self.asked.borrow().contains(&key) {
            self.asked.borrow_mut().push(key);
        }
        self.table?.get(key)
    }
    /// The entry of a key unless it is `"none"`.
    pub fn wanted(&self, key: &'static str) -> Option<&'a Entry> {
        self.entry(key).filter(|entry| !is_none(&entry.node))
    }
    /// Notes a value as given.
    pub fn given(&self, key: &str, node: &Node) {
        self.desk
            .resolve(self.path_of(key), node.value.written(), SetBy::Given);
    }
    /// Notes a value that holds because nothing is written, in words of its own.
    pub fn assumed(&self, key: &str, value: impl Into<String>, why: &str) {
        self.desk
            .resolve(self.path_of(key), value, SetBy::Default(why.to_string()));
    }
    /// Notes a value that a word stands for.
    pub fn by_word(&self, key: &str, node: &Node, value: impl Into<String>) {
        let word = format!("{} = \"{}\"", self.path_of(key), node.value.written());
        self.desk
            .resolve(self.path_of(key), value, SetBy::Word(word));
    }
    /// A value of the wrong type.
    pub fn wrong_type<T>(&self, key: &str, node: &Node, needed: &str) -> Read<T> {
        let example = keys::example(&self.pattern_of(key));
        self.desk.problem(
            Problem::at(
                &node.place,
                format!(
                    "{} needs {needed}, but this is {}",
                    self.path_of(key),
                    node.value.words()
                ),
            )
            .help(format!("write it like {key} = {example}")),
        );
        Read::Bad(node.place.clone())
    }
    /// A key that must be there is not.
    pub fn missing(&self, key: &str) {
        if self.is_misspelt_here(key) {
            return; // told once, as an unknown name
        }
        let example = keys::example(&self.pattern_of(key));
        let title = if self.path.is_empty() {
            format!("the file has no section [{key}]")
        } else {
            format!("[{}] lacks {key}", self.path)
        };
        let problem = match &self.place {
            Some(place) => Problem::at(place, title),
            None => Problem::at(&Place::new(0, 0..0), title),
        };
        let advice = match keys::key(&self.pattern_of(key)) {
            Some(_) => format!("add {key} = {example}"),
            None => format!("add a line [{key}], and below it what it needs"),
        };
        self.desk.problem(problem.help(advice));
    }
    /// Whether an unknown key of this section is nearly this one.
    fn is_misspelt_here(&self, key: &str) -> bool {
        let unknown = |entry: &&Entry| !keys::is_known(&self.pattern_of(&entry.key));
        let mut strangers = self.everything().iter().filter(unknown);
        strangers.any(|entry| closest(&entry.key, [key]).is_some())
    }
    /// A quantity, in the base unit of its kind and within bounds of that unit.
    pub fn quantity(
        &self,
        key: &'static str,
        kind: &'static Kind,
        bounds: (f64, f64),
    ) -> Read<f64> {
        let Some(entry) = self.wanted(key) else {
            return Read::Absent;
        };
        let path = self.path_of(key);
        match quantity_of(self.desk, &path, &entry.node, kind, bounds) {
            Some(value) => {
                self.given(key, &entry.node);
                Read::Given(value, entry.node.place.clone())
            }
            None => Read::Bad(entry.node.place.clone()),
        }
    }
    /// A quantity, or its documented default.
    pub fn quantity_or_default(
        &self,
        key: &'static str,
        kind: &'static Kind,
        bounds: (f64, f64),
    ) -> f64 {
        match self.quantity(key, kind, bounds) {
            Read::Given(value, _) => value,
            Read::Bad(_) => default_quantity(&self.pattern_of(key), kind),
            Read::Absent => {
                self.note_default(key);
                default_quantity(&self.pattern_of(key), kind)
            }
        }
    }
    /// Notes the documented default of a key as used.
    pub fn note_default(&self, key: &str) {
        let known = keys::key(&self.pattern_of(key));
        if let Some(known) = known {
            self.desk.resolve(
                self.path_of(key),
                known.default,
                SetBy::Default(known.provenance.to_string()),
            );
        }
    }
    /// A whole number within bounds.
    pub fn count(&self, key: &'static str, bounds: (i64, i64)) -> Read<u32> {
        let Some(entry) = self.wanted(key) else {
            return Read::Absent;
        };
        let place = &entry.node.place;
        let Value::Whole(number) = entry.node.value else {
            return self.wrong_type(key, &entry.node, "a whole number");
        };
        if !(bounds.0..=bounds.1).contains(&number) {
            self.desk.problem(
                Problem::at(place, format!("{} is {number}", self.path_of(key)))
                    .label(format!("allowed: {} to {}", bounds.0, bounds.1)),
            );
            return Read::Bad(place.clone());
        }
        self.given(key, &entry.node);
        Read::Given(number as u32, place.clone())
    }
    /// A whole number within bounds, or its documented default.
    pub fn count_or_default(&self, key: &'static str, bounds: (i64, i64)) -> u32 {
        let read = self.count(key, bounds);
        if read.is_absent() {
            self.note_default(key);
        }
        let usual = keys::key(&self.pattern_of(key)).and_then(|key| key.default.parse().ok());
        read.or(usual.unwrap_or(0))
    }
    /// A plain number within bounds.
    pub fn number(&self, key: &'static str, bounds: (f64, f64)) -> Read<f64> {
        let Some(entry) = self.wanted(key) else {
            return Read::Absent;
        };
        let place = &entry.node.place;
        let number = match entry.node.value {
            Value::Whole(number) => number as f64,
            Value::Number(number) => number,
            _ => return self.wrong_type(key, &entry.node, "a plain number"),
        };
        if !(bounds.0..=bounds.1).contains(&number) {
            self.desk.problem(
                Problem::at(place, format!("{} is {number}", self.path_of(key)))
                    .label(format!("allowed: {} to {}", bounds.0, bounds.1)),
            );
            return Read::Bad(place.clone());
        }
        self.given(key, &entry.node);
        Read::Given(number, place.clone())
    }
    /// True or false.
    pub fn truth(&self, key: &'static str) -> Read<bool> {
        let Some(entry) = self.wanted(key) else {
            return Read::Absent;
        };
        match entry.node.value {
            Value::Truth(truth) => {
                self.given(key, &entry.node);
                Read::Given(truth, entry.node.place.clone())
            }
            _ => self.wrong_type(key, &entry.node, "true or false (without quotes)"),
        }
    }
    /// A text.
    pub fn text(&self, key: &'static str) -> Read<String> {
        let Some(entry) = self.entry(key) else {
            return Read::Absent;
        };
        match &entry.node.value {
            Value::Text(text) => {
                self.given(key, &entry.node);
                Read::Given(text.clone(), entry.node.place.clone())
            }
            _ => self.wrong_type(key, &entry.node, "a text in quotes"),
        }
    }
    /// One of some words; the number is its place in the list.
    pub fn choice(&self, key: &'static str, words: &[&str]) -> Read<usize> {
        let entry = if words.contains(&"none") {
            self.entry(key)
        } else {
            self.wanted(key)
        };
        let Some(entry) = entry else {
            return Read::Absent;
        };
        match choice_of(self.desk, &self.path_of(key), &entry.node, words) {
            Some(at) => {
                self.given(key, &entry.node);
                Read::Given(at, entry.node.place.clone())
            }
            None => Read::Bad(entry.node.place.clone()),
        }
    }
    /// One of some words, or the documented default.
    pub fn choice_or_default(&self, key: &'static str, words: &[&str]) -> usize {
        let read = self.choice(key, words);
        if read.is_absent() {
            self.note_default(key);
        }
        let usual = keys::key(&self.pattern_of(key)).map_or("", |key| key.default);
        let at = words.iter().position(|word| *word == usual);
        read.or(at.unwrap_or(0))
    }
    /// True or false, or the documented default.
    pub fn truth_or_default(&self, key: &'static str) -> bool {
        let read = self.truth(key);
        if read.is_absent() {
            self.note_default(key);
        }
        let usual = keys::key(&self.pattern_of(key)).is_some_and(|key| key.default == "true");
        read.or(usual)
    }
    /// A section of this section; empty when it is absent, `"none"` or wrong.
    pub fn section(&self, key: &'static str) -> Reader<'a> {
        let mut reader = Reader {
            desk: self.desk,
            path: self.path_of(key),
            pattern: self.pattern_of(key),
            place: None,
            table: None,
            asked: RefCell::default(),
        };
        if let Some(entry) = self.wanted(key) {
            reader.place = Some(entry.key_place.clone());
            match &entry.node.value {
                Value::Table(table) => reader.table = Some(table),
                _ => {
                    let _: Read<()> = self.wrong_type(key, &entry.node, "a section");
                }
            }
        }
        reader
    }
    /// The named entries of this section: all keys nobody asked for, in the order of the file.
    ///
    /// Call it after the fixed keys were asked for. Entries that are `"none"` are left out.
    pub fn named(&self, pattern: &'static str) -> Vec<Reader<'a>> {
        let Some(table) = self.table else {
            return Vec::new();
        };
        let fixed = self.asked.borrow().clone();
        let entries = table
            .entries
            .iter()
            .filter(|entry| !fixed.contains(&entry.key.as_str()) && !is_none(&entry.node));
        entries
            .filter_map(|entry| self.named_entry(pattern, entry))
            .collect()
    }
    fn named_entry(&self, pattern: &'static str, entry: &'a Entry) -> Option<Reader<'a>> {
        let Value::Table(table) = &entry.node.value else {
            self.not_an_entry(pattern, entry);
            return None;
        };
        Some(Reader {
            desk: self.desk,
            path: self.path_of(&entry.key),
            pattern: self.pattern_of(pattern),
            place: Some(entry.key_place.clone()),
            table: Some(table),
            asked: RefCell::default(),
        })
    }
    fn not_an_entry(&self, pattern: &str, entry: &Entry) {
        let fixed = self.asked.borrow();
        let known: Vec<&str> = fixed.to_vec();
        let near = closest(&entry.key, known.iter().copied());
        let title = match near {
            Some(_) => format!("[{}] has no key {}", self.path, entry.key),
            None => format!(
                "{}.{} is {}",
                self.path,
                entry.key,
                entry.node.value.words()
            ),
        };
        let problem = Problem::at(&entry.key_place, title);
        let problem = match near {
            Some(near) => problem
                .label("unknown name")
                .help(format!("did you mean {near}?")),
            None => problem.label("an entry is a table in braces").help(format!(
                "write it like {} = {}",
                entry.key,
                keys::example(&self.pattern_of(pattern))
            )),
        };
        self.desk.problem(problem);
    }
    /// Every key of this section with its value, asked or not; marks them as asked.
    pub fn everything(&self) -> &'a [Entry] {
        self.table.map_or(&[], |table| &table.entries)
    }
    /// Reports the keys nobody asked for.
    pub fn close(&self) {
        let Some(table) = self.table else { return };
        let asked = self.asked.borrow();
        for entry in &table.entries {
            if !asked.contains(&entry.key.as_str()) {
                self.desk.problem(self.unknown(entry, &asked));
            }
        }
    }
    fn unknown(&self, entry: &Entry, asked: &[&'static str]) -> Problem {
        let title = match (self.path.is_empty(), &entry.node.value) {
            (true, Value::Table(_)) => format!("there is no section [{}]", entry.key),
            (true, _) => format!("there is no key {}", entry.key),
            (false, _) => format!("[{}] has no key {}", self.path, entry.key),
        };
        let problem = Problem::at(&entry.key_place, title).label("unknown name");
        if let Some(near) = closest(&entry.key, asked.iter().copied()) {
            return problem.help(format!("did you mean {near}?"));
        }
        let problem = match keys::sections_with(&entry.key).as_slice() {
            [] => problem,
            sections => problem.help(format!(
                "{} belongs in {}",
                entry.key,
                sections.join(" or ")
            )),
        };
        problem.help(format!("known here: {}", asked.join(", ")))
    }
}

/// Whether a value is the word that removes an entry.
pub fn is_none(node: &Node) -> bool {
    matches!(&node.value, Value::Text(text) if text == "none")
}

fn dotted(path: &str, key: &str) -> String {
    if path.is_empty() {
        key.to_string()
    } else {
        format!("{path}.{key}")
    }
}

fn default_quantity(pattern: &str, kind: &'static Kind) -> f64 {
    let text = keys::key(pattern).map_or("", |key| key.default);
    quantity::read(text, kind).unwrap_or(0.0)
}

/// A node as a quantity of a kind within bounds; what is wrong goes to the desk.
pub fn quantity_of(
    desk: &Desk,
    path: &str,
    node: &Node,
    kind: &'static Kind,
    bounds: (f64, f64),
) -> Option<f64> {
    let text = match &node.value {
        Value::Text(text) => text.clone(),
        Value::Whole(_) | Value::Number(_) => node.value.written(),
        _ => {
            desk.problem(
                Problem::at(
                    &node.place,
                    format!(
                        "{path} needs {}, but this is {}",
                        kind.name,
                        node.value.words()
                    ),
                )
                .help(format!("write it like {}", refusal::quoted(kind.examples))),
            );
            return None;
        }
    };
    match quantity::read(&text, kind) {
        Ok(_) if bare_where_quotes_are_needed(node, kind) => {
            let refused = quantity::Refusal::NoUnit {
                number: text.clone(),
            };
            desk.problem(refusal::problem(path, &text, kind, &refused, &node.place));
            None
        }
        Ok(value) => within(desk, path, &text, value, kind, bounds, &node.place),
        Err(refused) => {
            desk.problem(refusal::problem(path, &text, kind, &refused, &node.place));
            None
        }
    }
}

/// A share is written with its percent sign, so that `0.5` and `50` cannot be mixed up.
fn bare_where_quotes_are_needed(node: &Node, kind: &Kind) -> bool {
    let bare = match &node.value {
        Value::Text(text) => quantity::split(text).is_ok_and(|split| split.unit.is_empty()),
        _ => true,
    };
    bare && kind.base().symbol == "1"
}

fn within(
    desk: &Desk,
    path: &str,
    text: &str,
    value: f64,
    kind: &'static Kind,
    bounds: (f64, f64),
    place: &Place,
) -> Option<f64> {
    if value >= bounds.0 && value <= bounds.1 {
        return Some(value);
    }
    let symbol = quantity::split(text).ok().map_or("", |split| split.unit);
    let unit = kind.spelled(symbol).unwrap_or(kind.base());
    let print = |base: f64| digits(unit.from_base(base));
    let allowed = if bounds.1 == f64::INFINITY {
        format!("allowed: {} {} or more", print(bounds.0), unit.symbol)
    } else {
        format!(
            "allowed: {} to {} {}",
            print(bounds.0),
            print(bounds.1),
            unit.symbol
        )
    };
    let problem = Problem::at(place, format!("{path} is {text}")).label(allowed);
    desk.problem(match other_scale(text, kind, bounds) {
        Some(help) => problem.help(help),
        None => problem,
    });
    None
}

/// A node as one of some words.
pub fn choice_of(desk: &Desk, path: &str, node: &Node, words: &[&str]) -> Option<usize> {
    let found = match &node.value {
        Value::Text(text) => words.iter().position(|word| word == text),
        _ => None,
    };
    if found.is_none() {
        let problem = Problem::at(&node.place, format!("{path} is {}", node.value.shown()))
            .label(format!("allowed: {}", words.join(", ")));
        let near = match &node.value {
            Value::Text(text) => closest(text, words.iter().copied()),
            _ => None,
        };
        desk.problem(match near {
            Some(near) => problem.help(format!("did you mean \"{near}\"?")),
            None => problem,
        });
    }
    found
}

/// Where a temperature would be allowed in another scale: the text to write.
fn other_scale(text: &str, kind: &'static Kind, bounds: (f64, f64)) -> Option<String> {
    if !kind.units.iter().any(|unit| unit.shift != 0.0) {
        return None;
    }
    let number = quantity::split(text).ok()?.number;
    let fits = |unit: &&Unit| (bounds.0..=bounds.1).contains(&unit.to_base(number));
    let unit = kind.units.iter().find(fits)?;
    let meant = digits((unit.to_base(number) * 10.0).round() / 10.0);
    let (number, symbol, base) = (digits(number), unit.symbol, kind.base().symbol);
    Some(format!(
        "if {number} was meant in {symbol}, write \"{number} {symbol}\" (= {meant} {base})"
    ))
}
