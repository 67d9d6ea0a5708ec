//! Reads one section: knows which keys were asked for, and reports those nobody asked for.
//!
//! A reader never returns early: what is wrong goes to the [`Desk`], and reading goes on.

mod node;
mod ranges;
mod strangers;
mod values;

use std::cell::RefCell;

use crate::analysis::case::SetBy;

use super::desk::Desk;
use super::keys;
use super::problem::Place;
pub use super::read::Read;
use super::tree::{Entry, Node, Table, Value};

pub use node::{choice_of, is_none, quantity_of};
pub use ranges::{Said, ends_of, is_range};

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
                _ => self.not_a_section(key, &entry.node),
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
}

fn dotted(path: &str, key: &str) -> String {
    if path.is_empty() {
        key.to_string()
    } else {
        format!("{path}.{key}")
    }
}
