//! Every key of a study file. `NAME` stands for the id of a parameter or a dotted path of the scenario.

use super::key::{Key, key};

/// Every key of a study file.
#[rustfmt::skip]
pub const STUDY_KEYS: &[Key] = &[
    key("study.scenario", "the tank it is about, or several: then the scenario is one more input", "\"../sixty.toml\"", "required", ""),
    key("study.method", "variance, trajectories, points, latin, or one at a time", "\"variance\"", "required", ""),
    key("study.members", "how many points, trajectories, or steps of each input", "1024", "1024 of variance, 64 of trajectories, 4096 of points and latin, 9 of one at a time", "judgement"),
    key("study.seed", "another draw; the same seed gives the same study", "1", "1", ""),
    key("study.milestones", "what is looked at, by the names of `firstfill explain milestones`", "[\"ready_day\", \"tan_peak_mg_n_per_l\"]", "ready day, ready by, peaks of ammonia and nitrite, worst night", "judgement"),
    key("study.ready_by", "the day of the milestone ready_by, and of what tanks ready by then have in common", "21", "28", "four weeks, a judgement"),
    key("study.by", "of variance: shares of each input, or of each group as one: input, group", "\"group\"", "input", ""),
    key("study.second_order", "of variance: whether pairs are asked for too, which doubles the runs", "true", "false", ""),
    key("study.levels", "of trajectories: on how many levels an input stands, an even number", "4", "4", "Morris 1991"),
    key("inputs.usual", "inputs with their usual spread (check --uncertain lists them): \"all\", groups, or names", "[\"soil\", \"microbes\", \"k_600_ripple\"]", "", ""),
    key("inputs.NAME", "an input: \"usual\"; a range of which one in twenty lies below and one above; { from, to, form = \"even\" }; { settings = [...] } or \"FROM..TO:N\"; \"none\" leaves it out", "\"3..4 dKH\"", "", ""),
    key("groups.NAME", "another group of an input: soil, microbes, gas, plants, water, care", "\"water\"", "the group of its process or section", ""),
];
