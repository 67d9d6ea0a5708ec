//! `manifest.json`: enough to repeat a run to the byte. No clock and no machine is in it, so that
//! equal runs give equal folders.

use serde::Serialize;

use crate::analysis::case::{Case, SetBy};
use crate::analysis::forecast::Forecast;
use crate::analysis::outcome::Outcome;
use crate::analysis::ready::{Ready, Verdict};
use crate::engine::result::RunResult;
use crate::model::parameter_set::Origin;

use super::csv::ready::OF_100;
use super::waiting::later;

/// Name and text of scenario files.
pub type Texts = Vec<(String, String)>;

/// Everything the manifest is made from.
#[derive(Debug, Clone, Copy)]
pub struct Story<'a> {
    /// The scenario.
    pub case: &'a Case,
    /// Its run and what it means.
    pub outcome: &'a Outcome,
    /// Many plausible tanks; none where only the central run was asked for.
    pub forecast: Option<&'a Forecast>,
    /// Name and text of every scenario file, the one asked for first.
    pub files: &'a [(String, String)],
    /// What was asked for on the command line: name and value.
    pub options: &'a [(String, String)],
}

#[derive(Serialize)]
struct Manifest<'a> {
    program: &'static str,
    version: &'static str,
    scenario: Scenario<'a>,
    options: Vec<Named<'a>>,
    ready: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    plausible_tanks: Option<Plausible>,
    resolved: Vec<Value<'a>>,
    parameters: Vec<Parameter<'a>>,
    limits: Vec<LimitValue<'a>>,
    numerics: Numerics,
    ledger: Vec<Account>,
    notices: Vec<String>,
}

#[derive(Serialize)]
struct Scenario<'a> {
    name: &'a str,
    filled_on: Option<String>,
    filled_at_minute: u32,
    last_day: u32,
    look_ahead_days: u32,
    files: Vec<ScenarioFile<'a>>,
}

#[derive(Serialize)]
struct ScenarioFile<'a> {
    path: &'a str,
    text: &'a str,
}

#[derive(Serialize)]
struct Named<'a> {
    name: &'a str,
    value: &'a str,
}

#[derive(Serialize)]
struct Plausible {
    members: usize,
    failed: usize,
    seed: u64,
    varied_inputs: usize,
    ready_by: Vec<(String, String)>,
}

#[derive(Serialize)]
struct Value<'a> {
    path: &'a str,
    value: &'a str,
    set_by: &'static str,
    #[serde(skip_serializing_if = "str::is_empty")]
    because: &'a str,
}

#[derive(Serialize)]
struct Parameter<'a> {
    id: &'static str,
    value: f64,
    unit: &'static str,
    default: f64,
    low: f64,
    high: f64,
    set_by: &'static str,
    #[serde(skip_serializing_if = "str::is_empty")]
    because: &'a str,
    source: String,
}

#[derive(Serialize)]
struct LimitValue<'a> {
    key: &'a str,
    value: f64,
    unit: &'a str,
    set_by: &'static str,
    source: String,
}

#[derive(Serialize)]
struct Numerics {
    step_minutes: u32,
    step_after_a_switch_minutes: u32,
    steps: u64,
    rate_evaluations: u64,
    steps_held_back: u64,
    worst_ledger_error: f64,
}

#[derive(Serialize)]
struct Account {
    quantity: &'static str,
    unit: &'static str,
    start: f64,
    now: f64,
    error: f64,
    relative_error: f64,
}

/// The manifest as text, ending with a line feed.
///
/// # Errors
/// None in practice: every part is text or a number.
pub fn text(story: &Story) -> serde_json::Result<String> {
    let mut text = serde_json::to_string_pretty(&manifest(story))?;
    text.push('\n');
    Ok(text)
}

fn manifest<'a>(story: &Story<'a>) -> Manifest<'a> {
    let (case, run) = (story.case, &story.outcome.run);
    Manifest {
        program: env!("CARGO_PKG_NAME"),
        version: env!("CARGO_PKG_VERSION"),
        scenario: scenario(story),
        options: story
            .options
            .iter()
            .map(|(name, value)| Named { name, value })
            .collect(),
        ready: ready(&story.outcome.verdict),
        plausible_tanks: story.forecast.map(plausible),
        resolved: resolved(case),
        parameters: parameters(case),
        limits: limits(case),
        numerics: Numerics {
            step_minutes: run.input.step_minutes,
            step_after_a_switch_minutes: run.input.step_after_a_switch_minutes,
            steps: run.work.steps,
            rate_evaluations: run.work.evaluations,
            steps_held_back: run.work.held_back,
            worst_ledger_error: run.ledger.worst(),
        },
        ledger: accounts(run),
        notices: notices(run, case),
    }
}

fn scenario<'a>(story: &Story<'a>) -> Scenario<'a> {
    let case = story.case;
    Scenario {
        name: &case.name,
        filled_on: case.filled_on.map(|date| date.to_string()),
        filled_at_minute: case.input.filled_at,
        last_day: case.input.last_day,
        look_ahead_days: case.input.lookahead_days,
        files: story
            .files
            .iter()
            .map(|(path, text)| ScenarioFile { path, text })
            .collect(),
    }
}

fn ready(verdict: &Verdict) -> String {
    match verdict.ready {
        Ready::Day(day) => format!("day {day}"),
        Ready::QuietNotRipe { day, .. } => format!("quiet from day {day}, not shown to be ripe"),
        Ready::LaterThan(day) => format!("later than day {day}"),
    }
}

fn plausible(forecast: &Forecast) -> Plausible {
    let (members, curve) = (&forecast.ensemble.members, &forecast.curve);
    let by = |of_100: usize| {
        let day = curve.day_of(of_100);
        let told = day.map_or(later(curve.last_day), |day| format!("day {day}"));
        (format!("{of_100} of 100"), told)
    };
    Plausible {
        members: members.len(),
        failed: members.len() - curve.members,
        seed: forecast.seed,
        varied_inputs: forecast.uncertain.rows().len(),
        ready_by: OF_100.map(by).to_vec(),
    }
}

fn resolved(case: &Case) -> Vec<Value<'_>> {
    case.resolved
        .iter()
        .map(|value| {
            let (set_by, because) = match &value.set_by {
                SetBy::Given => ("given", ""),
                SetBy::Word(word) => ("word", word.as_str()),
                SetBy::Default(source) => ("default", source.as_str()),
                SetBy::Override(why) => ("override", why.as_str()),
                SetBy::WorkedOut(from) => ("worked out", from.as_str()),
            };
            Value {
                path: &value.path,
                value: &value.value,
                set_by,
                because,
            }
        })
        .collect()
}

fn parameters(case: &Case) -> Vec<Parameter<'_>> {
    case.input
        .parameters
        .iter()
        .map(|(spec, value, origin)| {
            let (set_by, because) = match origin {
                Origin::Default => ("default", ""),
                Origin::Word(word) => ("word", word.as_str()),
                Origin::Given { why } => ("override", why.as_str()),
            };
            Parameter {
                id: spec.id,
                value,
                unit: spec.unit,
                default: spec.default,
                low: spec.low,
                high: spec.high,
                set_by,
                because,
                source: spec.source.line(),
            }
        })
        .collect()
}

fn limits(case: &Case) -> Vec<LimitValue<'_>> {
    case.limits
        .all()
        .into_iter()
        .map(|limit| LimitValue {
            key: limit.key,
            value: limit.value,
            unit: limit.unit,
            set_by: if limit.given { "given" } else { "default" },
            source: limit.source.line(),
        })
        .collect()
}

fn accounts(run: &RunResult) -> Vec<Account> {
    run.ledger
        .accounts
        .iter()
        .map(|account| Account {
            quantity: account.quantity.name(),
            unit: account.quantity.unit(),
            start: account.start,
            now: account.now,
            error: account.error(),
            relative_error: account.relative_error(),
        })
        .collect()
}

/// Every notice of a scenario and its run, in words.
pub fn notices(run: &RunResult, case: &Case) -> Vec<String> {
    let said = case.notices.iter().cloned();
    said.chain(run.notices.iter().map(ToString::to_string))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;

    fn written() -> String {
        let example = Example::default();
        let case = example.case();
        text(&Story {
            case: &case,
            outcome: &Outcome::judged(&case, example.run(), None),
            forecast: None,
            files: &[("made-up.toml".into(), "name = \"made up\"\n".into())],
            options: &[("every".into(), "60min".into())],
        })
        .unwrap()
    }

    #[test]
    fn the_manifest_carries_the_text_of_the_scenario_and_where_each_value_came_from() {
        let read: serde_json::Value = serde_json::from_str(&written()).unwrap();
        assert_eq!(read["scenario"]["files"][0]["text"], "name = \"made up\"\n");
        assert_eq!(read["ready"], "day 6");
        assert_eq!(read["resolved"][1]["set_by"], "default");
        assert_eq!(read["limits"][0]["key"], "total_ammonia");
    }

    #[test]
    fn equal_runs_give_equal_manifests_without_nulls_in_place_of_numbers() {
        assert_eq!(written(), written());
        assert!(!written().contains("null"));
    }
}
