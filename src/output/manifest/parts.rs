//! The parts of a manifest, each read off the scenario, its run or its forecast.

use crate::analysis::case::{Case, SetBy};
use crate::analysis::forecast::Forecast;
use crate::analysis::ready::{Ready, Verdict};
use crate::engine::result::RunResult;
use crate::model::parameter_set::Origin;
use crate::output::csv::ready::OF_100;
use crate::output::waiting::later;

use super::shape::{
    Account, LimitValue, Manifest, Named, Numerics, Parameter, Plausible, Scenario, ScenarioFile,
    Value,
};
use super::{Story, notices};

/// All parts of a manifest, read off a run and what it means.
pub fn manifest<'a>(story: &Story<'a>) -> Manifest<'a> {
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
