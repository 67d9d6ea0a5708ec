//! What to write for an input that cannot vary as it is asked: a line to paste, tried on the scenario before it is told.

use crate::analysis::uncertain::Uncertain;
use crate::base::units::digits;
use crate::base::units::quantity::{self, Split};
use crate::scenario::paths::flat_of;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::tree::{Node, Value};
use crate::scenario::varied::paths::key_of;

use super::laid::{Ground, ranges, setting};
use super::values::{Values, WAYS, plain};
use super::wishes::Wish;

/// How far below and above the scenario's own value a line goes that is shown.
const ABOUT: [f64; 2] = [0.8, 1.2];
/// Most words that are offered as settings.
const WORDS: usize = 3;

/// What to write in place of `"usual"`, where the scenario gives one value.
pub fn instead_of_usual(name: &str, grounds: &[Ground]) -> String {
    let line = grounds.iter().find_map(|ground| {
        let about = About::of(name, ground);
        about.range().or_else(|| about.settings())
    });
    line.map_or_else(|| WAYS.to_string(), |line| format!("write {line}"))
}

/// The problem of a range where only settings can be given.
pub fn takes_no_range(wish: &Wish, ground: &Ground) -> Option<Problem> {
    let (Values::Range(node) | Values::Even(node)) = &wish.values else {
        return None;
    };
    let about = About::of(&wish.name, ground);
    if about.is_range(node) || about.range().is_some() {
        return None;
    }
    let title = format!(
        "{} takes no range: it is yours to set, so name its settings",
        wish.name
    );
    let problem = Problem::at(&node.place, title).label("settings to choose from");
    let line = about.settings_of(node).or_else(|| about.settings());
    Some(problem.help(line.map_or_else(|| WAYS.to_string(), |line| format!("write {line}"))))
}

/// A path of a scenario, about whose own value lines are made.
struct About<'a> {
    name: &'a str,
    ground: &'a Ground,
    /// The value the scenario has, or one like it from the list of keys.
    value: String,
}

impl<'a> About<'a> {
    fn of(name: &'a str, ground: &'a Ground) -> About<'a> {
        let all = flat_of(&ground.merged.table).into_iter();
        let mut own = all.filter(|(path, _)| path == name).map(|(_, value)| value);
        let example = || key_of(name).map(|key| key.example.trim_matches('"').to_string());
        About {
            name,
            ground,
            value: own.next_back().or_else(example).unwrap_or_default(),
        }
    }

    /// `water.tap.alkalinity = "3.2..4.8 dKH"`, where the scenario takes a range there.
    fn range(&self) -> Option<String> {
        let Split { number, unit, .. } = quantity::split(&self.value).ok()?;
        let [low, high] = ABOUT.map(|times| digits(times * number));
        let range = format!("{low}..{high} {unit}");
        let range = Value::Text(range.trim_end().to_string());
        let line = format!("{} = {}", self.name, range.shown());
        self.is_range(&node(range)).then_some(line)
    }

    /// Settings about the own value: of numbers a smaller and a larger one too, of words others of the list.
    fn settings(&self) -> Option<String> {
        let own = plain(&self.value);
        let settings = match (&own, quantity::split(&self.value)) {
            (Value::Whole(whole), _) => vec![own.clone(), Value::Whole(whole + 1)],
            (Value::Truth(_), _) => [true, false].map(Value::Truth).to_vec(),
            (_, Ok(Split { number, unit, .. })) => {
                let [low, high] = ABOUT.map(|times| times * number);
                [low, number, high]
                    .map(|number| with_unit(number, unit))
                    .to_vec()
            }
            _ => self.words(),
        };
        self.line(settings)
    }

    /// Settings between the ends of a range: both, and the one in the middle.
    fn settings_of(&self, range: &Node) -> Option<String> {
        let (first, last) = quantity::ends(&range.value.written())?;
        let [low, high] = [&first, &last].map(|end| quantity::split(end).ok());
        let (low, high) = (low?, high?);
        let middle = (low.number + high.number) / 2.0;
        let three = [low.number, middle, high.number].map(|number| with_unit(number, high.unit));
        let both = [plain(&first), plain(&last)];
        self.line(three.to_vec())
            .or_else(|| self.line(both.to_vec()))
    }

    /// Words of the list of keys that the scenario takes there.
    fn words(&self) -> Vec<Value> {
        let meaning = key_of(self.name).map_or("", |key| key.meaning);
        let words = meaning
            .split([',', ':'])
            .map(|word| word.trim().trim_start_matches("or "));
        let words = words.map(|word| Value::Text(word.to_string()));
        let taken = words.filter(|word| self.is_setting(word));
        taken.take(WORDS).collect()
    }

    /// The line, where there are two settings or more and the scenario takes each of them.
    fn line(&self, settings: Vec<Value>) -> Option<String> {
        let shown: Vec<String> = settings.iter().map(shown).collect();
        let differ = shown.len() > 1 && shown.windows(2).all(|two| two[0] != two[1]);
        let is_taken = differ && settings.iter().all(|setting| self.is_setting(setting));
        let line = format!("{} = {{ settings = [{}] }}", self.name, shown.join(", "));
        is_taken.then_some(line)
    }

    fn is_range(&self, range: &Node) -> bool {
        let wish = self.wish(Values::Range(range.clone()));
        let case = self.ground.with(ranges(&[wish]));
        case.is_ok_and(|case| {
            let varied = Uncertain::of(&case);
            varied.rows().iter().any(|row| row.name == self.name)
        })
    }

    fn is_setting(&self, value: &Value) -> bool {
        let wish = self.wish(Values::Settings(vec![node(value.clone())]));
        self.ground.with(setting(&wish, 0)).is_ok()
    }

    fn wish(&self, values: Values) -> Wish {
        Wish {
            name: self.name.to_string(),
            place: nowhere(),
            values,
        }
    }
}

fn nowhere() -> Place {
    Place::new(0, 0..0)
}

fn node(value: Value) -> Node {
    Node {
        place: nowhere(),
        value,
    }
}

fn with_unit(number: f64, unit: &str) -> Value {
    plain(format!("{} {unit}", digits(number)).trim_end())
}

/// As it is written in a list: texts in quotes.
fn shown(value: &Value) -> String {
    match value {
        Value::Text(text) => format!("\"{text}\""),
        other => other.written(),
    }
}
