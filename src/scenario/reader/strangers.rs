//! What a section says about keys that are missing, unknown or of the wrong type.

use crate::scenario::keys;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::tree::{Entry, Node, Value};
use crate::scenario::words::closest;

use super::{Read, Reader};

/// What keepers call things that have another name in a scenario.
const OTHER_NAMES: [(&str, &str); 2] = [("kh", "alkalinity"), ("gh", "hardness")];

/// The name in this section of what has another name among keepers.
fn own_name(key: &str, asked: &[&'static str]) -> Option<&'static str> {
    let key = key.to_ascii_lowercase();
    let (_, own) = OTHER_NAMES.iter().find(|(other, _)| *other == key)?;
    asked.contains(own).then_some(*own)
}

impl Reader<'_> {
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
    /// Something else stands where a section is needed.
    pub(super) fn not_a_section(&self, key: &str, node: &Node) {
        let path = self.path_of(key);
        let problem = Problem::at(
            &node.place,
            format!("{path} needs a section, but this is {}", node.value.words()),
        );
        self.desk.problem(match node.value {
            Value::List(_) => problem.help(format!(
                "write [{path}] in single brackets, and give each entry below it a name of its own"
            )),
            _ => problem.help(format!(
                "write [{path}] on a line, and below it what it says"
            )),
        });
    }
    /// Whether an unknown key of this section is nearly this one.
    pub(super) fn is_misspelt_here(&self, key: &str) -> bool {
        let unknown = |entry: &&Entry| !keys::is_known(&self.pattern_of(&entry.key));
        let mut strangers = self.everything().iter().filter(unknown);
        strangers.any(|entry| closest(&entry.key, [key]).is_some())
    }
    pub(super) fn not_an_entry(&self, pattern: &str, entry: &Entry) {
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
    pub(super) fn unknown(&self, entry: &Entry, asked: &[&'static str]) -> Problem {
        let title = match (self.path.is_empty(), &entry.node.value) {
            (true, Value::Table(_)) => format!("there is no section [{}]", entry.key),
            (true, _) => format!("there is no key {}", entry.key),
            (false, _) => format!("[{}] has no key {}", self.path, entry.key),
        };
        let problem = Problem::at(&entry.key_place, title).label("unknown name");
        if let Some(own) = own_name(&entry.key, asked) {
            return problem.help(format!("{} is written as {own} here", entry.key));
        }
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
