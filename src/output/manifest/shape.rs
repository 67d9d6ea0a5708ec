//! What stands in a manifest, part by part, as it is written.

use serde::Serialize;

/// Everything, in the order of the file.
#[derive(Serialize)]
pub struct Manifest<'a> {
    pub program: &'static str,
    pub version: &'static str,
    pub scenario: Scenario<'a>,
    pub options: Vec<Named<'a>>,
    pub ready: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plausible_tanks: Option<Plausible>,
    pub resolved: Vec<Value<'a>>,
    pub parameters: Vec<Parameter<'a>>,
    pub limits: Vec<LimitValue<'a>>,
    pub numerics: Numerics,
    pub ledger: Vec<Account>,
    pub notices: Vec<String>,
}

/// The scenario: when it begins and how long it runs, and its texts.
#[derive(Serialize)]
pub struct Scenario<'a> {
    pub name: &'a str,
    pub filled_on: Option<String>,
    pub filled_at_minute: u32,
    pub last_day: u32,
    pub look_ahead_days: u32,
    pub files: Vec<ScenarioFile<'a>>,
}

/// One scenario file.
#[derive(Serialize)]
pub struct ScenarioFile<'a> {
    pub path: &'a str,
    pub text: &'a str,
}

/// A name with its value.
#[derive(Serialize)]
pub struct Named<'a> {
    pub name: &'a str,
    pub value: &'a str,
}

/// What came of many plausible tanks.
#[derive(Serialize)]
pub struct Plausible {
    pub members: usize,
    pub failed: usize,
    pub seed: u64,
    pub varied_inputs: usize,
    pub ready_by: Vec<(String, String)>,
}

/// A value of the scenario, and who set it.
#[derive(Serialize)]
pub struct Value<'a> {
    pub path: &'a str,
    pub value: &'a str,
    pub set_by: &'static str,
    #[serde(skip_serializing_if = "str::is_empty")]
    pub because: &'a str,
}

/// A parameter of the model as it was in the run.
#[derive(Serialize)]
pub struct Parameter<'a> {
    pub id: &'static str,
    pub value: f64,
    pub unit: &'static str,
    pub default: f64,
    pub low: f64,
    pub high: f64,
    pub set_by: &'static str,
    #[serde(skip_serializing_if = "str::is_empty")]
    pub because: &'a str,
    pub source: String,
}

/// A limit the tank was judged by.
#[derive(Serialize)]
pub struct LimitValue<'a> {
    pub key: &'a str,
    pub value: f64,
    pub unit: &'a str,
    pub set_by: &'static str,
    pub source: String,
}

/// How the run was worked out.
#[derive(Serialize)]
pub struct Numerics {
    pub step_minutes: u32,
    pub steps: u64,
    pub rate_evaluations: u64,
    pub steps_held_back: u64,
    pub worst_ledger_error: f64,
}

/// A ledger at its close.
#[derive(Serialize)]
pub struct Account {
    pub quantity: &'static str,
    pub unit: &'static str,
    pub start: f64,
    pub now: f64,
    pub error: f64,
    pub relative_error: f64,
}
