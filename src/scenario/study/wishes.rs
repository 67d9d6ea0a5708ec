//! `[inputs]` and `[groups]`: what is to vary, as it is written; how, in `values`.

use crate::analysis::study::group::Group;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::reader::{Reader, choice_of};
use crate::scenario::tree::{Entry, Node, Value};

use super::head::Said;
use super::values::{Values, says_how, values};

/// One input that is asked for.
#[derive(Clone)]
pub struct Wish {
    /// Id of a parameter, or dotted path.
    pub name: String,
    /// Where the name stands.
    pub place: Place,
    /// The values it is to take.
    pub values: Values,
}

/// What `[inputs]` and `[groups]` say.
pub struct Wishes {
    /// Where `[inputs]` stands.
    pub place: Option<Place>,
    /// What is asked for all at once: `all`, groups, names.
    pub usual: Vec<Said>,
    /// Each input that has a line of its own.
    pub list: Vec<Wish>,
    /// Inputs that belong to another group.
    pub groups: Vec<(String, Place, Group)>,
}

/// Reads `[inputs]` and `[groups]`.
pub fn read(file: &Reader<'_>) -> Wishes {
    let section = file.section("inputs");
    if !section.is_there() {
        file.missing("inputs");
    }
    let mut wishes = Wishes {
        place: section.place.clone(),
        usual: Vec::new(),
        list: Vec::new(),
        groups: groups(file),
    };
    for entry in section.everything() {
        if entry.key == "usual" {
            wishes.usual.extend(usual(&section, &entry.node));
        } else {
            walk(&section, "", entry, &mut wishes.list);
        }
    }
    wishes
}

fn usual(section: &Reader<'_>, node: &Node) -> Vec<Said> {
    let nodes = match &node.value {
        Value::List(list) => list.as_slice(),
        _ => std::slice::from_ref(node),
    };
    let name = |node: &Node| match &node.value {
        Value::Text(text) => Some((text.clone(), node.place.clone())),
        other => {
            let title = format!("inputs.usual needs names, but this is {}", other.words());
            let like = "write it like usual = \"all\" or usual = [\"soil\", \"microbes\", \"k_600_ripple\"]";
            section
                .desk
                .problem(Problem::at(&node.place, title).help(like));
            None
        }
    };
    nodes.iter().filter_map(name).collect()
}

fn groups(file: &Reader<'_>) -> Vec<(String, Place, Group)> {
    let section = file.section("groups");
    let mut flat = Vec::new();
    for entry in section.everything() {
        leaves("", entry, &mut flat);
    }
    let words = Group::ALL.map(Group::word);
    let group = |(name, place, node): (String, Place, &Node)| {
        let path = format!("groups.{name}");
        let at = choice_of(section.desk, &path, node, &words)?;
        Some((name, place, Group::ALL[at]))
    };
    flat.into_iter().filter_map(group).collect()
}

fn leaves<'a>(above: &str, entry: &'a Entry, flat: &mut Vec<(String, Place, &'a Node)>) {
    let name = dotted(above, &entry.key);
    match &entry.node.value {
        Value::Table(table) => table
            .entries
            .iter()
            .for_each(|inner| leaves(&name, inner, flat)),
        _ => flat.push((name, entry.key_place.clone(), &entry.node)),
    }
}

fn dotted(above: &str, key: &str) -> String {
    match above {
        "" => key.to_string(),
        _ => format!("{above}.{key}"),
    }
}

/// Dotted paths come as tables within tables: down to what says how an input varies.
fn walk(section: &Reader<'_>, above: &str, entry: &Entry, list: &mut Vec<Wish>) {
    let name = dotted(above, &entry.key);
    if let Value::Table(table) = &entry.node.value
        && !says_how(table)
    {
        return table
            .entries
            .iter()
            .for_each(|inner| walk(section, &name, inner, list));
    }
    if let Some(values) = values(section, &name, &entry.node) {
        let name = name
            .strip_prefix("parameters.")
            .unwrap_or(&name)
            .to_string();
        let place = entry.key_place.clone();
        list.push(Wish {
            name,
            place,
            values,
        });
    }
}
