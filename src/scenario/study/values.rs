//! How an input varies, as it is written behind its name: a range, settings, or as usual.

use crate::base::units::quantity;
use crate::scenario::problem::Problem;
use crate::scenario::reader::{Reader, choice_of, is_none};
use crate::scenario::tree::{Entry, Node, Table, Value};
use crate::scenario::varied::division;

/// How it is written; for messages.
pub const WAYS: &str = "write \"usual\", a range \"3..4 dKH\", { from = \"3 dKH\", to = \"4 dKH\", form = \"even\" } or { settings = [\"20 %\", \"40 %\"] }";
/// Most settings of one input.
const MOST_SETTINGS: usize = 1000;

/// The values an input is to take.
#[derive(Clone)]
pub enum Values {
    /// Those of its usual spread.
    Usual,
    /// A range: 5 % and 95 % point.
    Range(Node),
    /// A range all of which is as likely.
    Even(Node),
    /// Some settings.
    Settings(Vec<Node>),
    /// None: it stays as in the central run.
    Kept,
}

/// Whether a table says how an input varies, in place of holding more of its path.
pub fn says_how(table: &Table) -> bool {
    let has = |key| table.get(key).is_some();
    has("settings") || (has("from") && has("to")) || table.entries.is_empty()
}

/// What is written behind the name of an input; none where that is a problem, which has been told.
pub fn values(section: &Reader<'_>, name: &str, node: &Node) -> Option<Values> {
    let found = match &node.value {
        _ if is_none(node) => Some(Values::Kept),
        Value::Text(text) if text == "usual" => Some(Values::Usual),
        Value::Text(text) if text.contains("..") => {
            return has_width(section, name, node, text).then(|| Values::Range(node.clone()));
        }
        Value::Table(table) => return of_table(section, name, node, table),
        _ => None,
    };
    if found.is_none() {
        let title = format!(
            "inputs.{name} is {}, which does not vary",
            node.value.shown()
        );
        section
            .desk
            .problem(Problem::at(&node.place, title).help(WAYS));
    }
    found
}

fn of_table(section: &Reader<'_>, name: &str, node: &Node, table: &Table) -> Option<Values> {
    let known: &[&str] = match table.get("settings") {
        Some(_) => &["settings"],
        None => &["from", "to", "form"],
    };
    let is_known = |entry: &&Entry| known.contains(&entry.key.as_str());
    if let Some(stranger) = table.entries.iter().find(|entry| !is_known(entry)) {
        let title = format!("inputs.{name} has no key {}", stranger.key);
        let problem = Problem::at(&stranger.key_place, title);
        section
            .desk
            .problem(problem.label(format!("known here: {}", known.join(", "))));
        return None;
    }
    if let Some(settings) = table.get("settings") {
        return settings_of(section, name, &settings.node).map(Values::Settings);
    }
    let (Some(from), Some(to)) = (table.get("from"), table.get("to")) else {
        let title = format!("inputs.{name} does not say how it varies");
        section
            .desk
            .problem(Problem::at(&node.place, title).help(WAYS));
        return None;
    };
    if let Some(form) = table.get("form") {
        choice_of(
            section.desk,
            &format!("inputs.{name}.form"),
            &form.node,
            &["even"],
        )?;
    }
    let range = format!("{}..{}", from.node.value.written(), to.node.value.written());
    has_width(section, name, node, &range).then(|| {
        Values::Even(Node {
            place: node.place.clone(),
            value: Value::Text(range),
        })
    })
}

/// Whether a range rises; one that does not is a problem. What else it may lack is told by the reader of scenarios.
fn has_width(section: &Reader<'_>, name: &str, node: &Node, range: &str) -> bool {
    let ends = quantity::ends(range);
    let split = |end: &str| {
        let split = quantity::split(end).ok()?;
        Some((split.number, split.unit.to_string()))
    };
    let both = ends.and_then(|(first, last)| split(&first).zip(split(&last)));
    let Some(((low, of_low), (high, of_high))) = both else {
        return true;
    };
    if of_low != of_high || low < high {
        return true;
    }
    let (title, label, help) = match low == high {
        true => (
            "goes from a value to the same, so it does not vary",
            "both ends are the same",
            "give a wider range, or take the line out: what is not among the inputs stays as the scenario has it",
        ),
        false => (
            "does not rise",
            "the lower end first",
            "write the lower end before the higher one",
        ),
    };
    let problem = Problem::at(&node.place, format!("inputs.{name} {title}"));
    section.desk.problem(problem.label(label).help(help));
    false
}

/// Settings as a list, or as a range divided: `"20 %..80 %:4"`.
fn settings_of(section: &Reader<'_>, name: &str, node: &Node) -> Option<Vec<Node>> {
    let list = match &node.value {
        Value::List(list) => list.clone(),
        Value::Text(text) if text.contains("..") && text.contains(':') => {
            match divided(name, text, node) {
                Ok(list) => list,
                Err(problem) => {
                    section.desk.problem(*problem);
                    return None;
                }
            }
        }
        _ => Vec::new(),
    };
    let title = match list.as_slice() {
        [] => format!("inputs.{name} needs a list of settings, or \"FROM..TO:N\""),
        [_] => format!("inputs.{name} has one setting only, so it does not vary"),
        many if many.len() > MOST_SETTINGS => format!("inputs.{name} has {} settings", many.len()),
        _ => match twice(&list) {
            Some(setting) => format!("inputs.{name} has {setting} twice"),
            None => return Some(list),
        },
    };
    let like =
        "write it like { settings = [\"20 %\", \"40 %\"] } or { settings = \"20 %..80 %:4\" }";
    section
        .desk
        .problem(Problem::at(&node.place, title).help(like));
    None
}

fn twice(list: &[Node]) -> Option<String> {
    let shown: Vec<String> = list.iter().map(|node| node.value.shown()).collect();
    let repeats = |at: &usize| shown[..*at].contains(&shown[*at]);
    let at = (0..shown.len()).find(repeats)?;
    Some(shown[at].clone())
}

fn divided(name: &str, text: &str, node: &Node) -> Result<Vec<Node>, Box<Problem>> {
    let refused = |title: String| Box::new(Problem::at(&node.place, title));
    let (range, count) = text.rsplit_once(':').unwrap_or((text, ""));
    let count = count
        .trim()
        .parse()
        .ok()
        .filter(|count| (2..=MOST_SETTINGS).contains(count));
    let count = count.ok_or_else(|| {
        refused(format!(
            "inputs.{name}: \"{text}\" does not end in a number of settings"
        ))
    })?;
    let ends = quantity::ends(range);
    let (first, last) =
        ends.ok_or_else(|| refused(format!("inputs.{name}: \"{text}\" is no range")))?;
    let range = division::ends(&first, &last, &node.place)?;
    let axis = division::divided(name, &range, count);
    division::refuse_parts(&axis, &range, &node.place)?;
    let of = |words: &str| Node {
        place: node.place.clone(),
        value: plain(words),
    };
    Ok(axis
        .settings
        .iter()
        .map(|setting| of(&setting.words))
        .collect())
}

/// A number as a number, true and false as what they are, anything else as a text.
pub fn plain(words: &str) -> Value {
    let whole = words.parse().map(Value::Whole);
    let number = || words.parse().map(Value::Number);
    let truth = || words.parse().map(Value::Truth);
    let number = whole.or_else(|_| number());
    number.unwrap_or_else(|_| truth().unwrap_or(Value::Text(words.to_string())))
}
